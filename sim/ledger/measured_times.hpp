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
    {33, 117.72},  // value of type, 0
    {35, 0.96},  // value of type, 2
    {36, 224.47},  // value of type, 3
    {38, 662.81},  // tone, 0
    {39, 20.6},  // tone, 1
    {40, 0.31},  // tone, 2
    {46, 135.01},  // page, 4
    {52, 414.1},  // group of fills, 0
    {53, 51.23},  // group of fills, 1
    {54, 145.47},  // rect of a fill
    {55, 259.38},  // group of texts, 0
    {56, 6.46},  // group of texts, 1
    {57, 0.08},  // group of texts, 2
    {59, 74.88},  // line of a text, 0
    {61, 27.44},  // text, 0
    {62, 78.28},  // text, 1
    {63, 375.9},  // readout, 0
    {65, 758.13},  // readout, 2
    {69, 20.85},  // readout, 6
    {70, 0.29},  // readout, 7
    {72, 614.59},  // readout, 9
    {74, 144.07},  // readout, 11
    {78, 175.28},  // readout, 15
    {79, 297.81},  // readout, 16
    {81, 29.39},  // readout, 18
    {84, 80.19},  // box, 1
    {85, 301.71},  // box, 2
    {90, 7.2},  // box, 7
    {91, 0.09},  // box, 8
    {95, 223.19},  // box, 12
    {96, 125.76},  // box, 13
    {97, 267.57},  // box, 14
    {98, 5.61},  // box, 15
    {99, 141.56},  // box, 16
    {100, 1.66},  // box, 17
    {103, 1.47},  // line of a box, 0
    {104, 924.29},  // line of a box, 1
    {105, 26.64},  // line of a box, 2
    {106, 314.31},  // meter, 0
    {107, 6.79},  // meter, 1
    {108, 413.22},  // meter, 2
    {114, 9.38},  // meter, 8
    {115, 266.9},  // meter, 9
    {116, 235.37},  // meter, 10
    {117, 252.32},  // meter, 11
    {118, 12.07},  // meter, 12
    {128, 438.98},  // meter, 22
    {129, 92.19},  // meter, 23
    {130, 107.12},  // meter, 24
    {131, 3.19},  // meter, 25
    {132, 17.1},  // meter, 26
    {134, 67.25},  // scale, 1
    {140, 595.81},  // scale, 7
    {141, 242.55},  // scale, 8
    {143, 189.25},  // scale, 10
    {146, 276.59},  // scale, 13
    {147, 230.28},  // scale, 14
    {148, 146.33},  // scale, 15
    {149, 196.13},  // scale, 16
    {150, 3.36},  // scale, 17
    {152, 895.36},  // scale, 19
    {153, 1241.89},  // scale, 20
    {155, 588.8},  // scale, 22
    {157, 159.69},  // scale, 24
    {161, 214.03},  // scale, 28
    {165, 148.38},  // scale, 32
    {170, 134.85},  // picture item, 1
    {171, 390.9},  // picture item, 2
    {176, 8.97},  // picture item, 7
    {177, 0.11},  // picture item, 8
    {179, 161.74},  // picture item, 10
    {180, 4.26},  // picture item, 11
    {182, 31.23},  // plain face, 0
    {183, 61.34},  // plain face, 1
    {188, 113.81},  // plain face, 6
    {192, 43.37},  // face in runs, 2
    {194, 24.89},  // face in runs, 4
    {195, 690.88},  // face in runs, 5
    {196, 211.94},  // face in runs, 6
    {198, 60.82},  // face in context, 0
    {199, 20.81},  // face in context, 1
    {202, 23.88},  // face in context, 4
    {203, 14.28},  // face in context, 5
    {204, 79.94},  // face in context, 6
    {206, 114.36},  // segment face, 0
    {211, 280.04},  // segment face, 5
    {214, 49.27},  // plain face in tones, 0
    {215, 165.74},  // plain face in tones, 1
    {223, 18.65},  // face in tones in context, 1
    {225, 511.99},  // face in tones in context, 3
    {226, 125.79},  // face in tones in context, 4
    {227, 5.87},  // face in tones in context, 5
    {228, 116.76},  // face in tones in context, 6
    {230, 4.18},  // plain glyph, 0
    {238, 47.05},  // place of a picture
    {239, 274.3},  // picture, 0
    {243, 3.42},  // picture, 4
    {244, 99.94},  // picture, 5
    {245, 117.62},  // picture, 6
    {247, 3.26},  // picture, 8
    {249, 7394.39},  // strip, 1
    {250, 454.2},  // strip, 2
    {251, 479.41},  // strip, 3
    {253, 564.05},  // window of the page
    {254, 908.85},  // window of a readout
    {255, 596.92},  // window of a box
    {256, 697.43},  // window of a meter
    {257, 216.34},  // window of a scale
    {258, 927.04},  // window of plain
    {260, 365.48},  // window of contexts
    {261, 619.75},  // window of enlarged contexts
    {262, 415.57},  // window of segments
    {266, 506.45},  // window of changed segments
    {267, 23.32},  // push for the page
    {270, 21.83},  // push for a meter
    {271, 78.23},  // push for a scale
    {272, 15.12},  // push for plain
    {273, 34.68},  // push for runs
    {274, 30.61},  // push for contexts
    {275, 24.72},  // push for enlarged contexts
    {276, 46.81},  // push for segments
    {277, 42.6},  // push for plain tones
    {278, 39.01},  // push for tones in context
    {280, 51.51},  // push for changed segments
    {287, 65.04},  // push of nothing for runs
    {289, 654.02},  // push of nothing for enlarged contexts
    {291, 4214.71},  // push of nothing for plain tones
    {294, 711.87},  // push of nothing for changed segments
    {295, 0.76},  // window's row of the page
    {296, 13.86},  // window's row of a readout
    {297, 233.93},  // window's row of a box
    {298, 1.07},  // window's row of a meter
    {300, 192.79},  // window's row of plain
    {301, 6.85},  // window's row of runs
    {302, 22.86},  // window's row of contexts
    {303, 1.98},  // window's row of enlarged contexts
    {305, 195.04},  // window's row of plain tones
    {306, 143.1},  // window's row of tones in context
    {310, 27.39},  // row in runs: the same
    {311, 29.25},  // run
    {312, 5.05},  // one of a run
    {313, 22.35},  // low bit of a run
    {314, 265.91},  // plain row: read
    {316, 25.68},  // plain bit
    {317, 133.63},  // plain stroke
    {320, 388.81},  // decisions in context, 0
    {321, 246.35},  // decisions in context, 1
    {322, 28.08},  // decisions in context, 2
    {323, 6.73},  // decisions in context, 3
    {324, 6.63},  // decisions in context, 4
    {325, 34.95},  // decisions in context, 5
    {326, 16.84},  // decisions in context, 6
    {327, 435.83},  // decisions in context, enlarged, 0
    {328, 303.5},  // decisions in context, enlarged, 1
    {329, 20.35},  // decisions in context, enlarged, 2
    {330, 33.64},  // decisions in context, enlarged, 3
    {332, 42.33},  // decisions in context, enlarged, 5
    {333, 14.53},  // decisions in context, enlarged, 6
    {334, 215.97},  // decisions in context, in tones, 0
    {336, 30.51},  // decisions in context, in tones, 2
    {337, 5.26},  // decisions in context, in tones, 3
    {338, 6.33},  // decisions in context, in tones, 4
    {340, 80.57},  // decisions in context, in tones, 6
    {341, 8.47},  // plain row in tones: read
    {342, 137.66},  // plain row in tones: blank
    {343, 58.53},  // plain pixel in tones
    {345, 537.45},  // segment row: end
    {346, 31.97},  // segment row: middle
    {348, 215.23},  // segment row: dots
    {349, 72.14},  // row at a corner
    {350, 25.09},  // column at a corner
    {351, 60.45},  // digit of a number
    {352, 9.68},  // byte of a number that loses a digit
    {353, 734.13},  // value on a meter
    {356, 206.85},  // tick passed over
    {362, 677.16},  // digit of changed segments
    {363, 256.64},  // row of changed segments
    {364, 57.14},  // service
    {368, 77.07},  // row of a box that may be rounded
    {369, 18.86},  // push for a box that may be rounded
    {370, 11.64},  // row sent that may be enlarged
    {371, 113.64},  // plain glyph beside segments
    {372, 209.61},  // glyph in runs beside segments
    {375, 70.96},  // glyph in runs beside contexts
    {377, 3.01},  // plain row beside runs
    {380, 3.66},  // paint of a meter that may have a peak
    {381, 1.73},  // paint of a meter that may be upright
    {382, 307.26},  // meter that may have a peak
    {385, 4.71},  // cell of a readout that may have a sign
    {391, 49.19},  // decisions in context, sent at once, 0
    {392, 44.4},  // decisions in context, sent at once, 1
    {394, 0.84},  // decisions in context, sent at once, 3
    {395, 5.87},  // decisions in context, sent at once, 4
    {396, 1.64},  // decisions in context, sent at once, 5
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 511, 0.01, 0.0363, 0.2573},
    {BusKind::spi, 2, false, 133.39, -1.29, -5.5, 44, 0, 0, 511, 0.0091, 0.0321, 0.2376},
    {BusKind::usart_spi, 2, false, 149.87, -9.7, -0.67, 32, 0, 0, 47, 0.017, 0.0531, 0.0722},
    {BusKind::parallel8, 2, false, 60.83, 9.17, -3.33, 24.01, -16.02, 4.5, 47, 0.0169, 0.0541, 0.0707},
    {BusKind::spi_timed, 3, false, -0.4, 48.56, -0.46, 54, 0, 0, 47, 0.0128, 0.0447, 0.0682},
    {BusKind::spi, 3, false, 128.6, 46.24, -4.87, 64, 0, 0, 47, 0.0114, 0.0439, 0.0676},
    {BusKind::usart_spi, 3, false, 148.9, 39.37, -0.47, 48, 0, 0, 47, 0.014, 0.0472, 0.0695},
    {BusKind::parallel8, 2, true, -21.57, 3.31, -5.17, 10.03, -2.05, 0.74, 47, 0.0262, 0.0651, 0.0798},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0198;

}  // namespace dialplate::measured
