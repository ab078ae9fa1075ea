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
    {27, 35.24},  // header, 26
    {33, 64.09},  // value of type, 0
    {35, 9.55},  // value of type, 2
    {36, 124.22},  // value of type, 3
    {38, 685.59},  // tone, 0
    {39, 22.23},  // tone, 1
    {40, 0.34},  // tone, 2
    {46, 183.97},  // page, 4
    {52, 411.35},  // group of fills, 0
    {53, 53.66},  // group of fills, 1
    {54, 148.87},  // rect of a fill
    {55, 248.5},  // group of texts, 0
    {56, 6.19},  // group of texts, 1
    {57, 0.08},  // group of texts, 2
    {59, 34.1},  // line of a text, 0
    {61, 37.31},  // text, 0
    {62, 124.5},  // text, 1
    {63, 393.3},  // readout, 0
    {72, 542.31},  // readout, 9
    {74, 126.46},  // readout, 11
    {78, 228.13},  // readout, 15
    {79, 312.9},  // readout, 16
    {81, 29.32},  // readout, 18
    {83, 181.36},  // box, 0
    {84, 28.21},  // box, 1
    {85, 374.54},  // box, 2
    {90, 8.12},  // box, 7
    {91, 0.1},  // box, 8
    {95, 232.59},  // box, 12
    {96, 137.19},  // box, 13
    {97, 258.71},  // box, 14
    {98, 5.82},  // box, 15
    {99, 171.46},  // box, 16
    {104, 914.86},  // line of a box, 1
    {105, 27.04},  // line of a box, 2
    {106, 333.43},  // meter, 0
    {108, 436.93},  // meter, 2
    {114, 5.03},  // meter, 8
    {115, 275.44},  // meter, 9
    {116, 244.23},  // meter, 10
    {117, 260.98},  // meter, 11
    {118, 18.84},  // meter, 12
    {128, 398.95},  // meter, 22
    {129, 107.87},  // meter, 23
    {130, 102.01},  // meter, 24
    {131, 3.04},  // meter, 25
    {132, 14.97},  // meter, 26
    {134, 89.86},  // scale, 1
    {140, 601.52},  // scale, 7
    {141, 207.96},  // scale, 8
    {143, 266.5},  // scale, 10
    {146, 266.24},  // scale, 13
    {147, 210.4},  // scale, 14
    {148, 90.43},  // scale, 15
    {149, 307.15},  // scale, 16
    {150, 40.58},  // scale, 17
    {152, 1018.31},  // scale, 19
    {153, 1243.07},  // scale, 20
    {155, 681.25},  // scale, 22
    {157, 142.32},  // scale, 24
    {161, 156.68},  // scale, 28
    {165, 117.35},  // scale, 32
    {170, 116.83},  // picture item, 1
    {171, 380.31},  // picture item, 2
    {176, 8.34},  // picture item, 7
    {177, 0.1},  // picture item, 8
    {179, 197.96},  // picture item, 10
    {180, 5.25},  // picture item, 11
    {182, 27.65},  // plain face, 0
    {183, 72.33},  // plain face, 1
    {184, 7.97},  // plain face, 2
    {188, 59.13},  // plain face, 6
    {192, 64.35},  // face in runs, 2
    {194, 2.45},  // face in runs, 4
    {195, 747.42},  // face in runs, 5
    {196, 152.13},  // face in runs, 6
    {198, 58.76},  // face in context, 0
    {199, 36.87},  // face in context, 1
    {203, 13.92},  // face in context, 5
    {204, 53.08},  // face in context, 6
    {207, 176.57},  // segment face, 1
    {211, 262.73},  // segment face, 5
    {214, 33.1},  // plain face in tones, 0
    {215, 152.67},  // plain face in tones, 1
    {222, 3.97},  // face in tones in context, 0
    {223, 58.15},  // face in tones in context, 1
    {225, 588.21},  // face in tones in context, 3
    {226, 96.19},  // face in tones in context, 4
    {227, 4.35},  // face in tones in context, 5
    {228, 86.34},  // face in tones in context, 6
    {230, 3.18},  // plain glyph, 0
    {236, 0.6},  // metrics of a glyph in context, 0
    {238, 133.19},  // place of a picture
    {239, 322.14},  // picture, 0
    {243, 6.2},  // picture, 4
    {244, 112.97},  // picture, 5
    {245, 102.05},  // picture, 6
    {247, 2.82},  // picture, 8
    {249, 6761.06},  // strip, 1
    {250, 403.7},  // strip, 2
    {251, 440.93},  // strip, 3
    {253, 695.15},  // window of the page
    {254, 1022.19},  // window of a readout
    {255, 730.85},  // window of a box
    {256, 821.44},  // window of a meter
    {257, 254.65},  // window of a scale
    {258, 1088.98},  // window of plain
    {260, 578.28},  // window of contexts
    {261, 833.19},  // window of enlarged contexts
    {266, 882.07},  // window of changed segments
    {267, 27.08},  // push for the page
    {269, 2.33},  // push for a box
    {270, 25.49},  // push for a meter
    {271, 97.63},  // push for a scale
    {272, 22.07},  // push for plain
    {273, 47.96},  // push for runs
    {274, 34.09},  // push for contexts
    {275, 29.56},  // push for enlarged contexts
    {276, 78.03},  // push for segments
    {277, 48.41},  // push for plain tones
    {278, 40.71},  // push for tones in context
    {280, 65.98},  // push for changed segments
    {287, 48.96},  // push of nothing for runs
    {289, 593},  // push of nothing for enlarged contexts
    {291, 4267.18},  // push of nothing for plain tones
    {294, 940.85},  // push of nothing for changed segments
    {295, 0.87},  // window's row of the page
    {296, 17.92},  // window's row of a readout
    {297, 239.71},  // window's row of a box
    {298, 1.13},  // window's row of a meter
    {300, 200.04},  // window's row of plain
    {301, 14.32},  // window's row of runs
    {302, 41.44},  // window's row of contexts
    {303, 10.21},  // window's row of enlarged contexts
    {304, 41.82},  // window's row of segments
    {305, 194.62},  // window's row of plain tones
    {306, 160.53},  // window's row of tones in context
    {308, 59.36},  // window's row of changed segments
    {310, 35.7},  // row in runs: the same
    {311, 33.26},  // run
    {312, 6.34},  // one of a run
    {313, 19.97},  // low bit of a run
    {314, 257.75},  // plain row: read
    {316, 25.93},  // plain bit
    {317, 129.04},  // plain stroke
    {320, 370.62},  // decisions in context, 0
    {321, 222.05},  // decisions in context, 1
    {322, 28.19},  // decisions in context, 2
    {323, 6.62},  // decisions in context, 3
    {324, 5.49},  // decisions in context, 4
    {325, 35.21},  // decisions in context, 5
    {326, 17.16},  // decisions in context, 6
    {327, 417.28},  // decisions in context, enlarged, 0
    {328, 261.56},  // decisions in context, enlarged, 1
    {329, 25.71},  // decisions in context, enlarged, 2
    {330, 17.79},  // decisions in context, enlarged, 3
    {332, 38.93},  // decisions in context, enlarged, 5
    {333, 15.59},  // decisions in context, enlarged, 6
    {334, 226.2},  // decisions in context, in tones, 0
    {335, 0.37},  // decisions in context, in tones, 1
    {336, 30.68},  // decisions in context, in tones, 2
    {337, 5.24},  // decisions in context, in tones, 3
    {338, 6.04},  // decisions in context, in tones, 4
    {340, 80.34},  // decisions in context, in tones, 6
    {341, 8.24},  // plain row in tones: read
    {342, 151.27},  // plain row in tones: blank
    {343, 58.54},  // plain pixel in tones
    {345, 457.73},  // segment row: end
    {346, 27.06},  // segment row: middle
    {347, 1.71},  // segment row: upright
    {348, 161.42},  // segment row: dots
    {349, 70.11},  // row at a corner
    {350, 25.48},  // column at a corner
    {351, 552.81},  // digit of a large number
    {352, 171.85},  // digit of a small number
    {353, 736.24},  // value on a meter
    {355, 38.79},  // cell of a readout that is drawn
    {356, 215.82},  // tick passed over
    {363, 224.05},  // row of changed segments
    {364, 41.31},  // service
    {368, 70.94},  // row of a box that may be rounded
    {369, 20.64},  // push for a box that may be rounded
    {370, 13.43},  // row sent that may be enlarged
    {371, 72.61},  // plain glyph beside segments
    {372, 110.89},  // glyph in runs beside segments
    {375, 47.93},  // glyph in runs beside contexts
    {379, 1.92},  // paint of a meter that may have blocks
    {380, 1.19},  // paint of a meter that may have a peak
    {381, 1.44},  // paint of a meter that may be upright
    {382, 354.96},  // meter that may have a peak
    {385, 14.92},  // cell of a readout that may have a sign
    {387, 23.98},  // decisions in context, sent at once, 0
    {388, 22.42},  // decisions in context, sent at once, 1
    {390, 1.61},  // decisions in context, sent at once, 3
    {391, 5.52},  // decisions in context, sent at once, 4
    {392, 1.51},  // decisions in context, sent at once, 5
    {393, 0.1},  // decisions in context, sent at once, 6
};
// clang-format on

/// What a driver takes: for a pixel, and beside that more than `spi_timed` of two bytes.
struct DriverTime {
    BusKind kind;
    int bytes_per_pixel;
    bool whole_port;  ///< parallel8: the data lines on one port, as on the large part.
    double window, push, empty_push, pixel;
    double even_pixel, even_push;  ///< Beside that, where both bytes of a colour are equal.
    int updates;  ///< Of layouts kept out of the fit. The errors are of these, as parts of the whole.
    double median_error, nine_of_ten_error, worst_error;
};
// clang-format off
inline constexpr DriverTime driver_time[] = {
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 511, 0.0076, 0.0295, 0.2374},
    {BusKind::spi, 2, false, 5.56, -5.17, -5.59, 44, 0, 0, 511, 0.007, 0.027, 0.224},
    {BusKind::usart_spi, 2, false, 18.52, -13.44, 4.7, 32, 0, 0, 47, 0.0148, 0.0353, 0.0746},
    {BusKind::parallel8, 2, false, -70.98, 5.39, 2.55, 24.02, -16.02, 4.5, 47, 0.0159, 0.0389, 0.073},
    {BusKind::spi_timed, 3, false, -2.77, 48.57, 1.48, 54, 0, 0, 47, 0.0104, 0.0304, 0.0699},
    {BusKind::spi, 3, false, -2.33, 42.43, 2.62, 64.01, 0, 0, 47, 0.0103, 0.0301, 0.0697},
    {BusKind::usart_spi, 3, false, 17.06, 35.66, 5.31, 48, 0, 0, 47, 0.0118, 0.0313, 0.0718},
    {BusKind::parallel8, 2, true, -153.86, -0.51, 1.67, 10.04, -2.05, 0.81, 47, 0.0214, 0.0525, 0.0622},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0191;

}  // namespace dialplate::measured
