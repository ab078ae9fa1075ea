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
    {29, 163.61},  // header, 28
    {33, 164.04},  // value of type, 0
    {35, 12.65},  // value of type, 2
    {36, 162.1},  // value of type, 3
    {38, 1042.3},  // tone, 0
    {39, 30.42},  // tone, 1
    {40, 0.44},  // tone, 2
    {44, 20.33},  // page, 2
    {46, 204.14},  // page, 4
    {50, 31.98},  // page, 8
    {52, 513.69},  // group of fills, 0
    {53, 54.69},  // group of fills, 1
    {54, 40.27},  // rect of a fill
    {55, 231.04},  // group of texts, 0
    {56, 5.68},  // group of texts, 1
    {57, 0.07},  // group of texts, 2
    {59, 6.34},  // line of a text, 0
    {61, 30.74},  // text, 0
    {62, 114.6},  // text, 1
    {63, 27.79},  // readout, 0
    {64, 71.42},  // readout, 1
    {65, 293.88},  // readout, 2
    {68, 11.1},  // readout, 5
    {69, 67.63},  // readout, 6
    {70, 0.72},  // readout, 7
    {72, 328.76},  // readout, 9
    {74, 108.27},  // readout, 11
    {75, 9.94},  // readout, 12
    {76, 86.98},  // readout, 13
    {78, 368.61},  // readout, 15
    {79, 30.36},  // readout, 16
    {81, 38.85},  // readout, 18
    {83, 117.98},  // box, 0
    {84, 87.4},  // box, 1
    {95, 84.8},  // box, 12
    {96, 81.34},  // box, 13
    {97, 97.4},  // box, 14
    {98, 2.59},  // box, 15
    {99, 90.53},  // box, 16
    {104, 952.26},  // line of a box, 1
    {105, 28.05},  // line of a box, 2
    {106, 21.28},  // meter, 0
    {107, 132.74},  // meter, 1
    {108, 31.76},  // meter, 2
    {115, 278.57},  // meter, 9
    {116, 247.63},  // meter, 10
    {117, 267.31},  // meter, 11
    {118, 11.51},  // meter, 12
    {128, 441.88},  // meter, 22
    {129, 91.09},  // meter, 23
    {130, 93.33},  // meter, 24
    {131, 2.77},  // meter, 25
    {132, 1.04},  // meter, 26
    {134, 70.26},  // scale, 1
    {140, 614.52},  // scale, 7
    {141, 299.15},  // scale, 8
    {143, 168.5},  // scale, 10
    {146, 256.15},  // scale, 13
    {147, 195.21},  // scale, 14
    {148, 230.49},  // scale, 15
    {149, 280.15},  // scale, 16
    {150, 45.92},  // scale, 17
    {151, 115.73},  // scale, 18
    {152, 1219.29},  // scale, 19
    {153, 1151.84},  // scale, 20
    {155, 446.71},  // scale, 22
    {157, 93.65},  // scale, 24
    {161, 221.77},  // scale, 28
    {165, 74.92},  // scale, 32
    {170, 120.14},  // picture item, 1
    {171, 466.05},  // picture item, 2
    {176, 11.06},  // picture item, 7
    {177, 0.14},  // picture item, 8
    {179, 167.11},  // picture item, 10
    {180, 4.11},  // picture item, 11
    {182, 28.07},  // plain face, 0
    {183, 95.03},  // plain face, 1
    {184, 22.94},  // plain face, 2
    {186, 27.62},  // plain face, 4
    {188, 60.13},  // plain face, 6
    {191, 55.87},  // face in runs, 1
    {192, 34.76},  // face in runs, 2
    {194, 53.07},  // face in runs, 4
    {195, 837.75},  // face in runs, 5
    {196, 123.57},  // face in runs, 6
    {198, 26.92},  // face in context, 0
    {199, 96.09},  // face in context, 1
    {200, 36.6},  // face in context, 2
    {202, 54.44},  // face in context, 4
    {203, 14.9},  // face in context, 5
    {207, 53.81},  // segment face, 1
    {208, 34.51},  // segment face, 2
    {210, 75.44},  // segment face, 4
    {211, 249.26},  // segment face, 5
    {212, 2.43},  // segment face, 6
    {214, 0.44},  // plain face in tones, 0
    {215, 110.24},  // plain face in tones, 1
    {216, 40.17},  // plain face in tones, 2
    {218, 101.57},  // plain face in tones, 4
    {220, 86.48},  // plain face in tones, 6
    {223, 198.36},  // face in tones in context, 1
    {224, 105.59},  // face in tones in context, 2
    {227, 0.58},  // face in tones in context, 5
    {228, 91.48},  // face in tones in context, 6
    {230, 1.87},  // plain glyph, 0
    {231, 636.06},  // plain glyph, 1
    {232, 6.34},  // glyph in runs, 0
    {233, 13.81},  // glyph in runs, 1
    {234, 8.73},  // plain glyph in tones, 0
    {235, 1161.75},  // plain glyph in tones, 1
    {236, 0.4},  // metrics of a glyph in context, 0
    {239, 219.18},  // picture, 0
    {244, 129},  // picture, 5
    {245, 3.89},  // picture, 6
    {247, 0.08},  // picture, 8
    {248, 614.8},  // strip, 0
    {249, 5275.63},  // strip, 1
    {251, 755.52},  // strip, 3
    {253, 514.73},  // window of the page
    {254, 687.02},  // window of a readout
    {255, 550.82},  // window of a box
    {256, 645.52},  // window of a meter
    {257, 198.07},  // window of a scale
    {258, 91.42},  // window of plain
    {260, 518.41},  // window of contexts
    {261, 785.38},  // window of enlarged contexts
    {262, 232.56},  // window of segments
    {263, 18.1},  // window of plain tones
    {265, 380.62},  // window of changed runs
    {266, 431.66},  // window of changed segments
    {267, 23.16},  // push for the page
    {268, 17.7},  // push for a readout
    {269, 13.03},  // push for a box
    {270, 22.37},  // push for a meter
    {271, 72.68},  // push for a scale
    {272, 29.04},  // push for plain
    {273, 33.36},  // push for runs
    {274, 28.78},  // push for contexts
    {275, 22.67},  // push for enlarged contexts
    {276, 54.56},  // push for segments
    {279, 79.44},  // push for changed runs
    {280, 65.23},  // push for changed segments
    {286, 73.91},  // push of nothing for plain
    {287, 194.48},  // push of nothing for runs
    {288, 38.92},  // push of nothing for contexts
    {291, 137.69},  // push of nothing for plain tones
    {292, 1098.64},  // push of nothing for tones in context
    {293, 82.13},  // push of nothing for changed runs
    {294, 542.38},  // push of nothing for changed segments
    {295, 0.77},  // window's row of the page
    {296, 19.28},  // window's row of a readout
    {297, 285.7},  // window's row of a box
    {298, 0.88},  // window's row of a meter
    {300, 73.41},  // window's row of plain
    {301, 6.34},  // window's row of runs
    {302, 38.09},  // window's row of contexts
    {303, 4.2},  // window's row of enlarged contexts
    {306, 40},  // window's row of tones in context
    {307, 42.17},  // window's row of changed runs
    {308, 9.14},  // window's row of changed segments
    {311, 5.21},  // run
    {312, 21.44},  // one of a run
    {313, 24.43},  // low bit of a run
    {314, 401.21},  // plain row: read
    {315, 125.99},  // plain row: blank
    {316, 26.14},  // plain bit
    {317, 117.35},  // plain stroke
    {319, 0.12},  // stroke sent
    {320, 347.42},  // decisions in context, 0
    {321, 202.28},  // decisions in context, 1
    {322, 27.05},  // decisions in context, 2
    {323, 6.07},  // decisions in context, 3
    {324, 11.52},  // decisions in context, 4
    {325, 33.44},  // decisions in context, 5
    {326, 17.8},  // decisions in context, 6
    {327, 329.62},  // decisions in context, enlarged, 0
    {328, 210.53},  // decisions in context, enlarged, 1
    {329, 12.09},  // decisions in context, enlarged, 2
    {330, 28.19},  // decisions in context, enlarged, 3
    {331, 16.89},  // decisions in context, enlarged, 4
    {332, 38.07},  // decisions in context, enlarged, 5
    {333, 18.5},  // decisions in context, enlarged, 6
    {334, 553.62},  // decisions in context, in tones, 0
    {336, 27.46},  // decisions in context, in tones, 2
    {337, 3.67},  // decisions in context, in tones, 3
    {338, 20.23},  // decisions in context, in tones, 4
    {340, 81.83},  // decisions in context, in tones, 6
    {341, 33.12},  // plain row in tones: read
    {343, 58.12},  // plain pixel in tones
    {344, 41.44},  // change of tone
    {345, 42.91},  // ground around the bits of a plain bitmap in tones
    {346, 357.45},  // segment row: end
    {347, 21.32},  // segment row: middle
    {349, 173.08},  // segment row: dots
    {350, 78.64},  // row at a corner
    {351, 25.09},  // column at a corner
    {352, 76.27},  // digit of a number
    {353, 19.48},  // byte of a number that loses a digit
    {354, 753.1},  // value on a meter
    {357, 196.86},  // tick passed over
    {359, 92.67},  // row compared
    {360, 1.78},  // run compared
    {361, 18.29},  // bit of a run compared
    {362, 31.37},  // plain bit compared
    {364, 226.95},  // row of changed segments
    {365, 22.12},  // service
    {369, 24.08},  // row of a box that may be rounded
    {370, 6.4},  // push for a box that may be rounded
    {371, 3.89},  // row sent that may be enlarged
    {372, 165.47},  // plain glyph beside segments
    {373, 251.84},  // glyph in runs beside segments
    {380, 17.73},  // paint of a meter that may have blocks
    {381, 3.05},  // paint of a meter that may have a peak
    {382, 7.6},  // paint of a meter that may be upright
    {383, 311.14},  // meter that may have a peak
    {386, 5.98},  // cell of a readout that may have a sign
    {387, 41.54},  // scale that may be a tape
    {388, 95.87},  // value looked up beside meters
    {389, 155.55},  // number that may have a marked digit
    {390, 13.51},  // low bit of a run beside pictures
    {391, 23.75},  // plain pixel in tones beside contexts in tones
    {393, 2.05},  // decisions in context, sent at once, 1
    {396, 8.69},  // decisions in context, sent at once, 4
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 0, 856, 0.005, 0.0183, 0.1379},
    {BusKind::spi, 2, false, 196.89, -1.21, -7.48, 43.98, 0, 0, 0, 856, 0.0046, 0.017, 0.129},
    {BusKind::usart_spi, 2, false, 218.67, -9.15, -7.07, 32, 0, 0, 5.94, 67, 0.0053, 0.0167, 0.0274},
    {BusKind::parallel8, 2, false, 131.37, 9.53, -8.23, 24, -16.01, 4.1, 0, 67, 0.007, 0.0154, 0.0297},
    {BusKind::spi_timed, 3, false, 13.82, 48.43, -12.72, 54, 0, 0, 0, 67, 0.0041, 0.0114, 0.0221},
    {BusKind::spi, 3, false, 210.4, 46.4, -21.28, 63.98, 0, 0, 0, 67, 0.0041, 0.0109, 0.0216},
    {BusKind::usart_spi, 3, false, 228.06, 39.65, -14.27, 48, 0, 0, 0, 67, 0.005, 0.0128, 0.024},
    {BusKind::parallel8, 2, true, 42.98, 3.53, -6.68, 10.02, -2.03, 0.38, 0, 67, 0.0121, 0.0226, 0.0357},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.022;

}  // namespace dialplate::measured
