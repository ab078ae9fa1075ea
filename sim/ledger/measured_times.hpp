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
    {27, 11.82},  // header, 26
    {33, 79.04},  // value of type, 0
    {35, 13.87},  // value of type, 2
    {36, 135.59},  // value of type, 3
    {38, 701.58},  // tone, 0
    {39, 22.65},  // tone, 1
    {40, 0.34},  // tone, 2
    {41, 33.83},  // place of a page
    {46, 126.07},  // page, 4
    {52, 410.28},  // group of fills, 0
    {53, 54.17},  // group of fills, 1
    {54, 150.38},  // rect of a fill
    {55, 206.36},  // group of texts, 0
    {56, 4.77},  // group of texts, 1
    {57, 0.06},  // group of texts, 2
    {59, 41.62},  // line of a text, 0
    {61, 54.56},  // text, 0
    {62, 116.76},  // text, 1
    {63, 381.89},  // readout, 0
    {65, 121.38},  // readout, 2
    {69, 2.37},  // readout, 6
    {70, 0.02},  // readout, 7
    {72, 504.99},  // readout, 9
    {74, 123.08},  // readout, 11
    {78, 240.04},  // readout, 15
    {79, 314.2},  // readout, 16
    {81, 33.83},  // readout, 18
    {83, 145.91},  // box, 0
    {84, 36.99},  // box, 1
    {85, 344.07},  // box, 2
    {90, 7.22},  // box, 7
    {91, 0.08},  // box, 8
    {95, 228.83},  // box, 12
    {96, 153.11},  // box, 13
    {97, 255.48},  // box, 14
    {98, 5.42},  // box, 15
    {99, 179.72},  // box, 16
    {104, 878.84},  // line of a box, 1
    {105, 25.7},  // line of a box, 2
    {106, 327.99},  // meter, 0
    {108, 450.46},  // meter, 2
    {115, 278.4},  // meter, 9
    {116, 244.93},  // meter, 10
    {117, 267.82},  // meter, 11
    {118, 18.26},  // meter, 12
    {128, 407.24},  // meter, 22
    {129, 97.02},  // meter, 23
    {130, 99.93},  // meter, 24
    {131, 2.99},  // meter, 25
    {132, 18.63},  // meter, 26
    {134, 82.93},  // scale, 1
    {140, 623.1},  // scale, 7
    {141, 205.21},  // scale, 8
    {143, 262.88},  // scale, 10
    {146, 271.34},  // scale, 13
    {147, 215.28},  // scale, 14
    {148, 103.81},  // scale, 15
    {149, 283.93},  // scale, 16
    {150, 28.82},  // scale, 17
    {152, 1062.48},  // scale, 19
    {153, 1241.76},  // scale, 20
    {155, 661.56},  // scale, 22
    {157, 144.17},  // scale, 24
    {161, 156.23},  // scale, 28
    {165, 125.94},  // scale, 32
    {170, 107.87},  // picture item, 1
    {171, 376.74},  // picture item, 2
    {176, 7.68},  // picture item, 7
    {177, 0.09},  // picture item, 8
    {179, 280.69},  // picture item, 10
    {180, 7.7},  // picture item, 11
    {182, 36.96},  // plain face, 0
    {183, 113},  // plain face, 1
    {188, 72.45},  // plain face, 6
    {190, 5.59},  // face in runs, 0
    {192, 58.61},  // face in runs, 2
    {193, 11.35},  // face in runs, 3
    {194, 671.88},  // face in runs, 4
    {196, 164.81},  // face in runs, 6
    {198, 39.66},  // face in context, 0
    {199, 52.28},  // face in context, 1
    {201, 117.81},  // face in context, 3
    {202, 3.18},  // face in context, 4
    {204, 0.77},  // face in context, 6
    {205, 0.02},  // face in context, 7
    {207, 101.48},  // segment face, 1
    {210, 393.46},  // segment face, 4
    {214, 23.99},  // plain face in tones, 0
    {215, 200.61},  // plain face in tones, 1
    {222, 33.72},  // face in tones in context, 0
    {223, 28.41},  // face in tones in context, 1
    {224, 72.59},  // face in tones in context, 2
    {227, 17.46},  // face in tones in context, 5
    {230, 2.79},  // plain glyph, 0
    {236, 15},  // metrics of a glyph in context, 0
    {237, 11},  // metrics of a glyph in context, 1
    {238, 226.32},  // place of a picture
    {239, 708.87},  // picture, 0
    {243, 8.57},  // picture, 4
    {244, 94.43},  // picture, 5
    {245, 69.28},  // picture, 6
    {247, 1.94},  // picture, 8
    {249, 6803.96},  // strip, 1
    {250, 211.61},  // strip, 2
    {251, 245.81},  // strip, 3
    {252, 8268.03},  // strip, 4
    {253, 697.71},  // window of the page
    {254, 1001.14},  // window of a readout
    {255, 717.79},  // window of a box
    {256, 826.7},  // window of a meter
    {257, 261.97},  // window of a scale
    {258, 1033.49},  // window of plain
    {260, 657.56},  // window of contexts
    {261, 475.47},  // window of enlarged contexts
    {266, 912.65},  // window of changed segments
    {267, 26.97},  // push for the page
    {269, 2.04},  // push for a box
    {270, 25.56},  // push for a meter
    {271, 94},  // push for a scale
    {272, 23.53},  // push for plain
    {273, 49.02},  // push for runs
    {274, 32.12},  // push for contexts
    {275, 33.08},  // push for enlarged contexts
    {276, 77.65},  // push for segments
    {277, 49.33},  // push for plain tones
    {278, 62.16},  // push for tones in context
    {280, 68.3},  // push for changed segments
    {287, 49.48},  // push of nothing for runs
    {289, 605.62},  // push of nothing for enlarged contexts
    {291, 4307.36},  // push of nothing for plain tones
    {294, 1012.43},  // push of nothing for changed segments
    {295, 0.87},  // window's row of the page
    {296, 18.81},  // window's row of a readout
    {297, 244.64},  // window's row of a box
    {298, 1.14},  // window's row of a meter
    {300, 194.4},  // window's row of plain
    {301, 16.27},  // window's row of runs
    {302, 45.34},  // window's row of contexts
    {303, 32.63},  // window's row of enlarged contexts
    {304, 44.18},  // window's row of segments
    {305, 192.1},  // window's row of plain tones
    {306, 310.45},  // window's row of tones in context
    {308, 58.66},  // window's row of changed segments
    {310, 30.66},  // row in runs: the same
    {311, 32.13},  // run
    {312, 6.16},  // one of a run
    {313, 19.74},  // low bit of a run
    {314, 259.32},  // plain row: read
    {316, 26.11},  // plain bit
    {317, 127.31},  // plain stroke
    {320, 344.33},  // decisions in context, 0
    {321, 219.54},  // decisions in context, 1
    {322, 30.49},  // decisions in context, 2
    {323, 4.35},  // decisions in context, 3
    {324, 14.29},  // decisions in context, 4
    {325, 12.3},  // decisions in context, 5
    {326, 14.78},  // decisions in context, 6
    {327, 396.23},  // decisions in context, enlarged, 0
    {328, 308.12},  // decisions in context, enlarged, 1
    {329, 45.5},  // decisions in context, enlarged, 2
    {330, 2.53},  // decisions in context, enlarged, 3
    {332, 11.84},  // decisions in context, enlarged, 5
    {333, 9.89},  // decisions in context, enlarged, 6
    {334, 208.47},  // decisions in context, in tones, 0
    {335, 1.88},  // decisions in context, in tones, 1
    {336, 42.02},  // decisions in context, in tones, 2
    {340, 21.26},  // decisions in context, in tones, 6
    {341, 7.98},  // plain row in tones: read
    {342, 140.39},  // plain row in tones: blank
    {343, 58.67},  // plain pixel in tones
    {345, 460.2},  // segment row: end
    {346, 27.17},  // segment row: middle
    {347, 0.99},  // segment row: upright
    {348, 161.99},  // segment row: dots
    {349, 65.26},  // row at a corner
    {350, 26.77},  // column at a corner
    {351, 553.61},  // digit of a large number
    {352, 171.63},  // digit of a small number
    {353, 731.6},  // value on a meter
    {355, 30.39},  // cell of a readout that is drawn
    {356, 219.33},  // tick passed over
    {363, 223.49},  // row of changed segments
    {364, 36.43},  // service
    {368, 69.86},  // row of a box that may be rounded
    {369, 19.9},  // push for a box that may be rounded
    {370, 9.05},  // row sent that may be enlarged
    {372, 70.11},  // glyph in runs beside segments
    {375, 104.8},  // glyph in runs beside contexts
    {379, 5.3},  // paint of a meter that may have blocks
    {380, 2.45},  // paint of a meter that may have a peak
    {381, 1.35},  // paint of a meter that may be upright
    {382, 348.95},  // meter that may have a peak
    {385, 15.32},  // cell of a readout that may have a sign
    {390, 1.1},  // decisions in context, sent at once, 3
    {391, 8.4},  // decisions in context, sent at once, 4
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 511, 0.0066, 0.0353, 0.2432},
    {BusKind::spi, 2, false, 3.04, -5.24, -2.2, 44, 0, 0, 511, 0.006, 0.0331, 0.2287},
    {BusKind::usart_spi, 2, false, 12.81, -12.98, 12.3, 32, 0, 0, 47, 0.0173, 0.0376, 0.0814},
    {BusKind::parallel8, 2, false, -75.39, 5.85, 8.73, 24.02, -16.01, 4.18, 47, 0.0184, 0.0444, 0.0799},
    {BusKind::spi_timed, 3, false, -10.61, 49.17, 11.37, 54, 0, 0, 47, 0.0125, 0.0348, 0.0765},
    {BusKind::spi, 3, false, -12.29, 43.11, 12.41, 64.01, 0, 0, 47, 0.0117, 0.0345, 0.0761},
    {BusKind::usart_spi, 3, false, 9.77, 36.2, 14.62, 48, 0, 0, 47, 0.014, 0.0358, 0.0783},
    {BusKind::parallel8, 2, true, -156.76, -0.18, 6.35, 10.02, -2.03, 0.59, 47, 0.0267, 0.0573, 0.0686},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0192;

}  // namespace dialplate::measured
