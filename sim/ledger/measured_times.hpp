// Written by tests/firmware/measure_times.cpp from firmware run on a simulated chip; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

/// Cycles of the ATmega328P for one of draw_terms(), with the driver `spi_timed` of two bytes a pixel.
struct EngineTerm {
    int term;
    double cycles;
};
// clang-format off
inline constexpr EngineTerm engine_work[] = {
    {29, 163.33},  // header, 28
    {33, 165.01},  // value of type, 0
    {35, 11.55},  // value of type, 2
    {36, 165.26},  // value of type, 3
    {38, 1038.61},  // tone, 0
    {39, 30.33},  // tone, 1
    {40, 0.43},  // tone, 2
    {44, 16.12},  // page, 2
    {46, 232.69},  // page, 4
    {50, 28.11},  // page, 8
    {52, 513.12},  // group of fills, 0
    {53, 54.89},  // group of fills, 1
    {54, 40.59},  // rect of a fill
    {55, 233.68},  // group of texts, 0
    {56, 5.75},  // group of texts, 1
    {57, 0.07},  // group of texts, 2
    {59, 10.93},  // line of a text, 0
    {61, 27.73},  // text, 0
    {62, 114.11},  // text, 1
    {63, 6.33},  // readout, 0
    {64, 79.4},  // readout, 1
    {65, 293.87},  // readout, 2
    {69, 73.92},  // readout, 6
    {70, 0.84},  // readout, 7
    {71, 0.01},  // readout, 8
    {72, 333.4},  // readout, 9
    {74, 107.85},  // readout, 11
    {75, 12.62},  // readout, 12
    {76, 88.36},  // readout, 13
    {78, 373.53},  // readout, 15
    {79, 26.61},  // readout, 16
    {81, 38.31},  // readout, 18
    {83, 114.59},  // box, 0
    {84, 88.26},  // box, 1
    {95, 84.9},  // box, 12
    {96, 81.77},  // box, 13
    {97, 98.11},  // box, 14
    {98, 2.61},  // box, 15
    {99, 90.47},  // box, 16
    {104, 965.16},  // line of a box, 1
    {105, 28.39},  // line of a box, 2
    {106, 7.55},  // meter, 0
    {107, 138.18},  // meter, 1
    {108, 19.33},  // meter, 2
    {115, 278.99},  // meter, 9
    {116, 247.85},  // meter, 10
    {117, 267.21},  // meter, 11
    {118, 11.46},  // meter, 12
    {128, 441.04},  // meter, 22
    {129, 91.61},  // meter, 23
    {130, 93.23},  // meter, 24
    {131, 2.77},  // meter, 25
    {132, 0.95},  // meter, 26
    {134, 69.82},  // scale, 1
    {140, 616.2},  // scale, 7
    {141, 297.47},  // scale, 8
    {143, 168.38},  // scale, 10
    {146, 255.9},  // scale, 13
    {147, 195.3},  // scale, 14
    {148, 230.34},  // scale, 15
    {149, 279.8},  // scale, 16
    {150, 46.58},  // scale, 17
    {151, 115.35},  // scale, 18
    {152, 1218.07},  // scale, 19
    {153, 1148.75},  // scale, 20
    {155, 447.37},  // scale, 22
    {157, 94.05},  // scale, 24
    {161, 221.2},  // scale, 28
    {165, 76.14},  // scale, 32
    {170, 121},  // picture item, 1
    {171, 353.9},  // picture item, 2
    {176, 9.41},  // picture item, 7
    {177, 0.12},  // picture item, 8
    {179, 181.92},  // picture item, 10
    {180, 4.3},  // picture item, 11
    {182, 27.62},  // plain face, 0
    {183, 87.5},  // plain face, 1
    {184, 18.61},  // plain face, 2
    {186, 28.47},  // plain face, 4
    {188, 60.45},  // plain face, 6
    {191, 53.28},  // face in runs, 1
    {192, 28.04},  // face in runs, 2
    {194, 56.21},  // face in runs, 4
    {195, 648.02},  // face in runs, 5
    {196, 127.29},  // face in runs, 6
    {198, 26.82},  // face in context, 0
    {199, 84.1},  // face in context, 1
    {200, 36.48},  // face in context, 2
    {202, 54.34},  // face in context, 4
    {203, 14.96},  // face in context, 5
    {206, 71.75},  // segment face, 0
    {207, 18.44},  // segment face, 1
    {208, 28.51},  // segment face, 2
    {210, 6.15},  // segment face, 4
    {211, 132.25},  // segment face, 5
    {212, 1.7},  // segment face, 6
    {214, 0.23},  // plain face in tones, 0
    {215, 101.38},  // plain face in tones, 1
    {216, 40.41},  // plain face in tones, 2
    {218, 99.38},  // plain face in tones, 4
    {220, 87.17},  // plain face in tones, 6
    {223, 201.71},  // face in tones in context, 1
    {224, 103.9},  // face in tones in context, 2
    {227, 0.69},  // face in tones in context, 5
    {228, 90.21},  // face in tones in context, 6
    {230, 2.64},  // plain glyph, 0
    {231, 721.21},  // plain glyph, 1
    {232, 6.39},  // glyph in runs, 0
    {233, 11.14},  // glyph in runs, 1
    {234, 8.44},  // plain glyph in tones, 0
    {235, 1175.7},  // plain glyph in tones, 1
    {236, 0.4},  // metrics of a glyph in context, 0
    {238, 73.39},  // place of a picture
    {239, 231.48},  // picture, 0
    {243, 0.79},  // picture, 4
    {244, 142.54},  // picture, 5
    {245, 4.83},  // picture, 6
    {247, 0.15},  // picture, 8
    {248, 703.55},  // strip, 0
    {249, 5030.59},  // strip, 1
    {251, 779.92},  // strip, 3
    {253, 516.31},  // window of the page
    {254, 686.59},  // window of a readout
    {255, 549.1},  // window of a box
    {256, 645.43},  // window of a meter
    {257, 197.69},  // window of a scale
    {258, 22.87},  // window of plain
    {259, 229.6},  // window of runs
    {260, 540.2},  // window of contexts
    {261, 813.8},  // window of enlarged contexts
    {263, 19.64},  // window of plain tones
    {265, 310.2},  // window of changed runs
    {266, 320.94},  // window of changed segments
    {267, 23.01},  // push for the page
    {268, 17.53},  // push for a readout
    {269, 13.08},  // push for a box
    {270, 22.27},  // push for a meter
    {271, 73.21},  // push for a scale
    {272, 28.72},  // push for plain
    {273, 33.45},  // push for runs
    {274, 28.48},  // push for contexts
    {275, 22.44},  // push for enlarged contexts
    {276, 29.76},  // push for segments
    {279, 45.36},  // push for changed runs
    {280, 11.26},  // push for changed segments
    {286, 69.13},  // push of nothing for plain
    {287, 189.88},  // push of nothing for runs
    {288, 42.64},  // push of nothing for contexts
    {291, 124.15},  // push of nothing for plain tones
    {292, 1106.05},  // push of nothing for tones in context
    {294, 219.4},  // push of nothing for changed segments
    {295, 0.76},  // window's row of the page
    {296, 19.23},  // window's row of a readout
    {297, 286.52},  // window's row of a box
    {298, 0.86},  // window's row of a meter
    {300, 68.75},  // window's row of plain
    {301, 1.73},  // window's row of runs
    {302, 38.27},  // window's row of contexts
    {303, 3.85},  // window's row of enlarged contexts
    {304, 17.94},  // window's row of segments
    {306, 39.79},  // window's row of tones in context
    {307, 20.02},  // window's row of changed runs
    {308, 11.25},  // window's row of changed segments
    {311, 3.56},  // run
    {312, 21.97},  // one of a run
    {313, 25.16},  // low bit of a run
    {314, 405.13},  // plain row: read
    {315, 129.36},  // plain row: blank
    {316, 26.11},  // plain bit
    {317, 117.8},  // plain stroke
    {320, 346.93},  // decisions in context, 0
    {321, 202.48},  // decisions in context, 1
    {322, 27.07},  // decisions in context, 2
    {323, 6.06},  // decisions in context, 3
    {324, 11.56},  // decisions in context, 4
    {325, 33.46},  // decisions in context, 5
    {326, 17.8},  // decisions in context, 6
    {327, 333.41},  // decisions in context, enlarged, 0
    {328, 210.24},  // decisions in context, enlarged, 1
    {329, 11.55},  // decisions in context, enlarged, 2
    {330, 28.72},  // decisions in context, enlarged, 3
    {331, 16.76},  // decisions in context, enlarged, 4
    {332, 38.25},  // decisions in context, enlarged, 5
    {333, 18.57},  // decisions in context, enlarged, 6
    {334, 552.46},  // decisions in context, in tones, 0
    {336, 27.48},  // decisions in context, in tones, 2
    {337, 3.68},  // decisions in context, in tones, 3
    {338, 20.15},  // decisions in context, in tones, 4
    {340, 81.83},  // decisions in context, in tones, 6
    {341, 33.54},  // plain row in tones: read
    {343, 58.12},  // plain pixel in tones
    {344, 41.26},  // change of tone
    {345, 42.9},  // ground around the bits of a plain bitmap in tones
    {346, 277.59},  // segment row: end
    {347, 16.51},  // segment row: middle
    {348, 1.44},  // segment row: upright
    {349, 164.92},  // segment row: dots
    {350, 78.72},  // row at a corner
    {351, 25.08},  // column at a corner
    {352, 70.49},  // digit of a number
    {353, 21.94},  // byte of a number that loses a digit
    {354, 753.68},  // value on a meter
    {357, 197.01},  // tick passed over
    {359, 282.1},  // row compared
    {362, 20.33},  // plain bit compared
    {364, 274.09},  // row of changed segments
    {365, 25.41},  // service
    {369, 23.71},  // row of a box that may be rounded
    {370, 6.17},  // push for a box that may be rounded
    {371, 8.15},  // row sent that may be enlarged
    {372, 170.28},  // plain glyph beside segments
    {373, 255.52},  // glyph in runs beside segments
    {380, 17.76},  // paint of a meter that may have blocks
    {381, 3.03},  // paint of a meter that may have a peak
    {382, 7.7},  // paint of a meter that may be upright
    {383, 311.77},  // meter that may have a peak
    {386, 5.6},  // cell of a readout that may have a sign
    {387, 40.87},  // scale that may be a tape
    {388, 96.1},  // value looked up beside meters
    {389, 158.95},  // number that may have a marked digit
    {390, 13.57},  // low bit of a run beside pictures
    {391, 23.72},  // plain pixel in tones beside contexts in tones
    {393, 2.09},  // decisions in context, sent at once, 1
    {396, 8.68},  // decisions in context, sent at once, 4
    {398, 0.89},  // decisions in context, sent at once, 6
};
// clang-format on

/// What a driver takes: for a pixel, and beside that more than `spi_timed` of two bytes.
struct DriverTime {
    BusKind kind;
    int bytes_per_pixel;
    bool whole_port;  ///< parallel8: the data lines on one port, as on the large part.
    double window, push, empty_push, pixel;
    double even_pixel, even_push;  ///< Beside that, where both bytes of a colour are equal.
    double decided_pixel;          ///< Beside that, of a glyph in `context` that it decides itself.
    int updates;  ///< Of layouts kept out of the fit. The errors are of these, as parts of the whole.
    double median_error, nine_of_ten_error, worst_error;
};
// clang-format off
inline constexpr DriverTime driver_time[] = {
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 0, 856, 0.005, 0.0186, 0.1719},
    {BusKind::spi, 2, false, 196.45, -0.86, -7.11, 43.98, 0, 0, 0, 856, 0.0047, 0.0169, 0.1289},
    {BusKind::usart_spi, 2, false, 216.36, -8.85, -4.52, 32, 0, 0, 5.95, 67, 0.0052, 0.0156, 0.028},
    {BusKind::parallel8, 2, false, 127.17, 9.82, -3.55, 24.02, -16.02, 4.03, 0, 67, 0.0067, 0.0156, 0.0307},
    {BusKind::spi_timed, 3, false, 12.1, 48.72, -10.9, 54, 0, 0, 0, 67, 0.0036, 0.0114, 0.0225},
    {BusKind::spi, 3, false, 208.16, 46.63, -18.84, 63.99, 0, 0, 0, 67, 0.0039, 0.011, 0.0221},
    {BusKind::usart_spi, 3, false, 226.01, 39.95, -12.05, 48, 0, 0, 0, 67, 0.0038, 0.0128, 0.0245},
    {BusKind::parallel8, 2, true, 35.15, 3.92, 2.1, 10.04, -2.04, 0.3, 0, 67, 0.0122, 0.0231, 0.0378},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.022;

}  // namespace dialplate::measured
