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
    {25, 2.7},  // header, 24
    {29, 164.75},  // header, 28
    {33, 160.24},  // value of type, 0
    {35, 13.2},  // value of type, 2
    {36, 159.69},  // value of type, 3
    {38, 1042.99},  // tone, 0
    {39, 29.89},  // tone, 1
    {40, 0.42},  // tone, 2
    {44, 26.49},  // page, 2
    {46, 199.83},  // page, 4
    {50, 29.21},  // page, 8
    {52, 513.43},  // group of fills, 0
    {53, 55.25},  // group of fills, 1
    {54, 40.55},  // rect of a fill
    {55, 238.15},  // group of texts, 0
    {56, 5.73},  // group of texts, 1
    {57, 0.07},  // group of texts, 2
    {60, 1.47},  // line of a text, 1
    {61, 24.61},  // text, 0
    {62, 119.13},  // text, 1
    {63, 31.31},  // readout, 0
    {64, 69.57},  // readout, 1
    {65, 297.32},  // readout, 2
    {68, 22.07},  // readout, 5
    {69, 65.2},  // readout, 6
    {70, 0.68},  // readout, 7
    {72, 328.5},  // readout, 9
    {74, 108.17},  // readout, 11
    {75, 17.08},  // readout, 12
    {76, 82.82},  // readout, 13
    {78, 362.9},  // readout, 15
    {79, 35.63},  // readout, 16
    {81, 38.54},  // readout, 18
    {83, 116.89},  // box, 0
    {84, 87.38},  // box, 1
    {95, 86.57},  // box, 12
    {96, 78.97},  // box, 13
    {97, 96.58},  // box, 14
    {98, 2.62},  // box, 15
    {99, 92.12},  // box, 16
    {104, 941.06},  // line of a box, 1
    {105, 27.88},  // line of a box, 2
    {106, 29.06},  // meter, 0
    {107, 129.01},  // meter, 1
    {108, 43.43},  // meter, 2
    {115, 276.02},  // meter, 9
    {116, 245.78},  // meter, 10
    {117, 259.47},  // meter, 11
    {118, 13.34},  // meter, 12
    {128, 438.23},  // meter, 22
    {129, 91.41},  // meter, 23
    {130, 93.09},  // meter, 24
    {131, 2.77},  // meter, 25
    {132, 0.34},  // meter, 26
    {134, 72.2},  // scale, 1
    {140, 620.67},  // scale, 7
    {141, 286.58},  // scale, 8
    {143, 208.05},  // scale, 10
    {146, 309.3},  // scale, 13
    {147, 198.39},  // scale, 14
    {148, 231.79},  // scale, 15
    {149, 282.69},  // scale, 16
    {150, 40.65},  // scale, 17
    {151, 141.92},  // scale, 18
    {152, 1228.09},  // scale, 19
    {153, 1109.82},  // scale, 20
    {155, 486.15},  // scale, 22
    {157, 87.69},  // scale, 24
    {161, 243.67},  // scale, 28
    {165, 64.91},  // scale, 32
    {170, 121.31},  // picture item, 1
    {171, 505.69},  // picture item, 2
    {176, 11.94},  // picture item, 7
    {177, 0.15},  // picture item, 8
    {179, 164.19},  // picture item, 10
    {180, 3.95},  // picture item, 11
    {182, 27},  // plain face, 0
    {183, 120.85},  // plain face, 1
    {184, 25.54},  // plain face, 2
    {185, 842.22},  // plain face, 3
    {186, 23.98},  // plain face, 4
    {188, 56.61},  // plain face, 6
    {191, 64.24},  // face in runs, 1
    {192, 37.78},  // face in runs, 2
    {193, 460.27},  // face in runs, 3
    {194, 50.67},  // face in runs, 4
    {195, 1085.41},  // face in runs, 5
    {196, 126.39},  // face in runs, 6
    {198, 25.59},  // face in context, 0
    {199, 103.56},  // face in context, 1
    {200, 34.16},  // face in context, 2
    {202, 56.51},  // face in context, 4
    {203, 14.84},  // face in context, 5
    {207, 65.03},  // segment face, 1
    {208, 49.96},  // segment face, 2
    {210, 63.31},  // segment face, 4
    {211, 257.56},  // segment face, 5
    {212, 1.93},  // segment face, 6
    {214, 0.68},  // plain face in tones, 0
    {215, 123.94},  // plain face in tones, 1
    {216, 39.98},  // plain face in tones, 2
    {218, 97.54},  // plain face in tones, 4
    {220, 83.79},  // plain face in tones, 6
    {223, 210.45},  // face in tones in context, 1
    {224, 100.89},  // face in tones in context, 2
    {225, 247.45},  // face in tones in context, 3
    {227, 0.71},  // face in tones in context, 5
    {228, 92.28},  // face in tones in context, 6
    {230, 1.52},  // plain glyph, 0
    {231, 456.09},  // plain glyph, 1
    {234, 9.75},  // plain glyph in tones, 0
    {235, 1171.42},  // plain glyph in tones, 1
    {236, 0.4},  // metrics of a glyph in context, 0
    {238, 5.14},  // place of a picture
    {239, 225.47},  // picture, 0
    {243, 0.09},  // picture, 4
    {244, 110.81},  // picture, 5
    {245, 3.16},  // picture, 6
    {247, 0.05},  // picture, 8
    {248, 481.41},  // strip, 0
    {249, 4821.5},  // strip, 1
    {251, 849.37},  // strip, 3
    {253, 569.93},  // window of the page
    {254, 749.38},  // window of a readout
    {255, 606.61},  // window of a box
    {256, 701.88},  // window of a meter
    {257, 211.61},  // window of a scale
    {258, 291.69},  // window of plain
    {260, 561.69},  // window of contexts
    {261, 863.2},  // window of enlarged contexts
    {262, 339.46},  // window of segments
    {263, 6.29},  // window of plain tones
    {265, 682.53},  // window of changed runs
    {266, 363.19},  // window of changed segments
    {267, 23.15},  // push for the page
    {268, 15.8},  // push for a readout
    {269, 12.71},  // push for a box
    {270, 22.08},  // push for a meter
    {271, 73.72},  // push for a scale
    {272, 25.63},  // push for plain
    {273, 31.19},  // push for runs
    {274, 28.78},  // push for contexts
    {275, 21.32},  // push for enlarged contexts
    {276, 48.95},  // push for segments
    {279, 53.22},  // push for changed runs
    {280, 48.77},  // push for changed segments
    {286, 70.21},  // push of nothing for plain
    {287, 33.79},  // push of nothing for runs
    {288, 57.29},  // push of nothing for contexts
    {291, 105.97},  // push of nothing for plain tones
    {292, 1050.26},  // push of nothing for tones in context
    {293, 134.46},  // push of nothing for changed runs
    {294, 576.08},  // push of nothing for changed segments
    {295, 0.77},  // window's row of the page
    {296, 20.79},  // window's row of a readout
    {297, 285.77},  // window's row of a box
    {298, 0.92},  // window's row of a meter
    {300, 66.04},  // window's row of plain
    {301, 5.46},  // window's row of runs
    {302, 39.62},  // window's row of contexts
    {303, 7.12},  // window's row of enlarged contexts
    {306, 44.78},  // window's row of tones in context
    {307, 102.32},  // window's row of changed runs
    {308, 23.23},  // window's row of changed segments
    {310, 2.57},  // row in runs: the same
    {312, 23.14},  // one of a run
    {313, 28.48},  // low bit of a run
    {314, 400.64},  // plain row: read
    {315, 126.46},  // plain row: blank
    {316, 26.17},  // plain bit
    {317, 116.62},  // plain stroke
    {319, 7.61},  // stroke sent
    {320, 342.66},  // decisions in context, 0
    {321, 200.61},  // decisions in context, 1
    {322, 27.11},  // decisions in context, 2
    {323, 6.09},  // decisions in context, 3
    {324, 11.84},  // decisions in context, 4
    {325, 33.17},  // decisions in context, 5
    {326, 17.86},  // decisions in context, 6
    {327, 327.02},  // decisions in context, enlarged, 0
    {328, 176.07},  // decisions in context, enlarged, 1
    {329, 7.04},  // decisions in context, enlarged, 2
    {330, 29.22},  // decisions in context, enlarged, 3
    {331, 19.8},  // decisions in context, enlarged, 4
    {332, 38.35},  // decisions in context, enlarged, 5
    {333, 20.04},  // decisions in context, enlarged, 6
    {334, 551.59},  // decisions in context, in tones, 0
    {336, 27.56},  // decisions in context, in tones, 2
    {337, 3.69},  // decisions in context, in tones, 3
    {338, 19.95},  // decisions in context, in tones, 4
    {340, 81.77},  // decisions in context, in tones, 6
    {341, 38.84},  // plain row in tones: read
    {343, 58.05},  // plain pixel in tones
    {344, 40.81},  // change of tone
    {345, 42.93},  // ground around the bits of a plain bitmap in tones
    {346, 525.69},  // segment row: end
    {347, 31.38},  // segment row: middle
    {349, 220.73},  // segment row: dots
    {350, 77.93},  // row at a corner
    {351, 25.17},  // column at a corner
    {352, 78.36},  // digit of a number
    {353, 18.47},  // byte of a number that loses a digit
    {354, 753.11},  // value on a meter
    {357, 196.9},  // tick passed over
    {359, 21.26},  // row compared
    {361, 34.09},  // bit of a run compared
    {362, 37.15},  // plain bit compared
    {364, 339.37},  // row of changed segments
    {365, 11.26},  // service
    {369, 23.98},  // row of a box that may be rounded
    {370, 6.63},  // push for a box that may be rounded
    {371, 3.16},  // row sent that may be enlarged
    {372, 172.75},  // plain glyph beside segments
    {373, 291.16},  // glyph in runs beside segments
    {380, 18.62},  // paint of a meter that may have blocks
    {381, 3.22},  // paint of a meter that may have a peak
    {382, 7.99},  // paint of a meter that may be upright
    {383, 309.34},  // meter that may have a peak
    {386, 6.15},  // cell of a readout that may have a sign
    {387, 39.93},  // scale that may be a tape
    {388, 95.95},  // value looked up beside meters
    {389, 155.96},  // number that may have a marked digit
    {390, 12.18},  // low bit of a run beside pictures
    {391, 23.74},  // plain pixel in tones beside contexts in tones
    {396, 8.6},  // decisions in context, sent at once, 4
    {397, 0.04},  // decisions in context, sent at once, 5
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 0, 856, 0.005, 0.0181, 0.1384},
    {BusKind::spi, 2, false, 130.71, -1.07, -3.81, 44, 0, 0, 0, 856, 0.0047, 0.0168, 0.1292},
    {BusKind::usart_spi, 2, false, 161.29, -9.18, -9.02, 32, 0, 0, 6, 67, 0.0062, 0.0144, 0.0256},
    {BusKind::parallel8, 2, false, 69.98, 9.62, -7.4, 24, -16, 4.09, 0, 67, 0.0064, 0.014, 0.0271},
    {BusKind::spi_timed, 3, false, 15.13, 48.63, -13.53, 54, 0, 0, 0, 67, 0.0035, 0.0102, 0.0199},
    {BusKind::spi, 3, false, 147.95, 46.57, -19.43, 63.98, 0, 0, 0, 67, 0.004, 0.0099, 0.02},
    {BusKind::usart_spi, 3, false, 165.66, 39.73, -12.28, 48, 0, 0, 0, 67, 0.005, 0.0116, 0.0211},
    {BusKind::parallel8, 2, true, -18.33, 3.55, -5.82, 10.02, -2.03, 0.43, 0, 67, 0.012, 0.0217, 0.032},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.022;

}  // namespace dialplate::measured
