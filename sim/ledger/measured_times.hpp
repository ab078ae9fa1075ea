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
    {16, 2.46},  // header, 15
    {27, 10.97},  // header, 26
    {33, 130.33},  // value of type, 0
    {35, 1.42},  // value of type, 2
    {36, 123.36},  // value of type, 3
    {38, 618.94},  // tone, 0
    {39, 21.14},  // tone, 1
    {40, 0.32},  // tone, 2
    {41, 14.81},  // place of a page
    {46, 202.61},  // page, 4
    {50, 14.53},  // page, 8
    {52, 531.59},  // group of fills, 0
    {53, 50.45},  // group of fills, 1
    {54, 22.62},  // rect of a fill
    {55, 177.7},  // group of texts, 0
    {56, 3.62},  // group of texts, 1
    {57, 0.04},  // group of texts, 2
    {60, 21.84},  // line of a text, 1
    {61, 36.82},  // text, 0
    {62, 103.62},  // text, 1
    {63, 399.75},  // readout, 0
    {72, 491.77},  // readout, 9
    {74, 121.51},  // readout, 11
    {77, 54.08},  // readout, 14
    {78, 35.03},  // readout, 15
    {79, 220.72},  // readout, 16
    {81, 31.17},  // readout, 18
    {83, 231.6},  // box, 0
    {84, 16.11},  // box, 1
    {85, 424.12},  // box, 2
    {90, 8.19},  // box, 7
    {91, 0.09},  // box, 8
    {95, 264.6},  // box, 12
    {96, 55.9},  // box, 13
    {97, 218.17},  // box, 14
    {98, 5.89},  // box, 15
    {99, 116.7},  // box, 16
    {104, 901.14},  // line of a box, 1
    {105, 26.95},  // line of a box, 2
    {106, 176.1},  // meter, 0
    {107, 52.37},  // meter, 1
    {108, 389.81},  // meter, 2
    {115, 250.14},  // meter, 9
    {116, 217.8},  // meter, 10
    {117, 240.01},  // meter, 11
    {118, 8.88},  // meter, 12
    {128, 272.37},  // meter, 22
    {129, 233.5},  // meter, 23
    {130, 97.86},  // meter, 24
    {131, 2.89},  // meter, 25
    {134, 175.88},  // scale, 1
    {140, 352.18},  // scale, 7
    {141, 301.92},  // scale, 8
    {143, 330.31},  // scale, 10
    {146, 291.67},  // scale, 13
    {147, 191.01},  // scale, 14
    {148, 76.99},  // scale, 15
    {149, 277.47},  // scale, 16
    {152, 1393.34},  // scale, 19
    {153, 1283.67},  // scale, 20
    {155, 473.89},  // scale, 22
    {157, 58.47},  // scale, 24
    {161, 21.82},  // scale, 28
    {165, 141.52},  // scale, 32
    {169, 147.76},  // picture item, 0
    {170, 57.33},  // picture item, 1
    {171, 657.29},  // picture item, 2
    {176, 17.13},  // picture item, 7
    {177, 0.22},  // picture item, 8
    {180, 70.99},  // plain face, 0
    {181, 245.86},  // plain face, 1
    {186, 48.58},  // plain face, 6
    {188, 25.36},  // face in runs, 0
    {189, 201.91},  // face in runs, 1
    {190, 28.03},  // face in runs, 2
    {192, 60.2},  // face in runs, 4
    {193, 7.6},  // face in runs, 5
    {194, 72.76},  // face in runs, 6
    {196, 56.52},  // face in context, 0
    {197, 127.2},  // face in context, 1
    {198, 14.86},  // face in context, 2
    {199, 60.8},  // face in context, 3
    {200, 1.74},  // face in context, 4
    {201, 4.67},  // face in context, 5
    {202, 3.85},  // face in context, 6
    {203, 0.1},  // face in context, 7
    {208, 97.64},  // segment face, 4
    {209, 85.59},  // segment face, 5
    {210, 2.09},  // segment face, 6
    {212, 0.97},  // plain glyph, 0
    {213, 56.39},  // plain glyph, 1
    {214, 5.81},  // glyph in runs, 0
    {215, 234.97},  // glyph in runs, 1
    {216, 15.97},  // metrics of a glyph in context, 0
    {217, 11.79},  // metrics of a glyph in context, 1
    {226, 43.73},  // picture, 7
    {227, 116.11},  // picture, 8
    {228, 846.1},  // strip, 0
    {229, 575.97},  // strip, 1
    {230, 709.01},  // window of the page
    {231, 1058.7},  // window of a readout
    {232, 683.86},  // window of a box
    {233, 832.23},  // window of a meter
    {234, 199.23},  // window of a scale
    {235, 87.96},  // window of plain
    {236, 143.99},  // window of runs
    {237, 568.44},  // window of contexts
    {238, 754.16},  // window of enlarged contexts
    {239, 923.38},  // window of segments
    {240, 26.63},  // push for the page
    {241, 0.48},  // push for a readout
    {242, 2.03},  // push for a box
    {243, 25.27},  // push for a meter
    {244, 98.78},  // push for a scale
    {245, 30.49},  // push for plain
    {246, 31.13},  // push for runs
    {247, 33.99},  // push for contexts
    {248, 33.15},  // push for enlarged contexts
    {249, 29.74},  // push for segments
    {257, 36.9},  // push of nothing for contexts
    {260, 0.91},  // window's row of the page
    {261, 23.19},  // window's row of a readout
    {262, 248.06},  // window's row of a box
    {263, 1.46},  // window's row of a meter
    {265, 74.76},  // window's row of plain
    {266, 73.77},  // window's row of runs
    {269, 397.55},  // window's row of segments
    {270, 231.03},  // row in runs: read
    {271, 32.35},  // row in runs: the same
    {272, 69.61},  // run
    {273, 22.92},  // one of a run
    {274, 19.06},  // low bit of a run
    {275, 422.44},  // plain row: read
    {276, 162.66},  // plain row: blank
    {277, 23.97},  // plain bit
    {278, 132.85},  // plain stroke
    {279, 8.78},  // row sent
    {281, 385.06},  // decisions in context, 0
    {282, 239.26},  // decisions in context, 1
    {283, 31.84},  // decisions in context, 2
    {285, 13.44},  // decisions in context, 4
    {286, 9.78},  // decisions in context, 5
    {287, 15.3},  // decisions in context, 6
    {288, 255.85},  // decisions in context, enlarged, 0
    {289, 307.63},  // decisions in context, enlarged, 1
    {290, 39.61},  // decisions in context, enlarged, 2
    {292, 35.3},  // decisions in context, enlarged, 4
    {293, 11.81},  // decisions in context, enlarged, 5
    {294, 11.06},  // decisions in context, enlarged, 6
    {295, 700.2},  // segment row: end
    {296, 41.91},  // segment row: middle
    {297, 560.09},  // segment row: upright
    {298, 14.48},  // segment row: dots
    {299, 66.03},  // row at a corner
    {300, 26.39},  // column at a corner
    {301, 560.27},  // digit of a large number
    {302, 176.93},  // digit of a small number
    {303, 753.59},  // value on a meter
    {305, 31.25},  // cell of a readout that is drawn
    {306, 222.5},  // tick passed over
    {307, 44.16},  // service
    {311, 67.14},  // row of a box that may be rounded
    {312, 19.21},  // push for a box that may be rounded
    {314, 92.34},  // plain glyph beside segments
    {315, 17.66},  // glyph in runs beside segments
    {316, 108.58},  // glyph in runs beside plain
    {318, 118.23},  // glyph in runs beside contexts
    {319, 17},  // row in runs beside plain
    {320, 60.44},  // plain row beside runs
    {322, 36.61},  // paint of a meter that may have blocks
    {323, 4.62},  // paint of a meter that may have a peak
    {324, 7.84},  // paint of a meter that may be upright
    {325, 261.17},  // meter that may have a peak
    {328, 8.51},  // cell of a readout that may have a sign
    {330, 442.38},  // decisions in context, sent at once, 0
    {331, 280.76},  // decisions in context, sent at once, 1
    {332, 2.39},  // decisions in context, sent at once, 2
    {333, 3.1},  // decisions in context, sent at once, 3
    {334, 7.04},  // decisions in context, sent at once, 4
    {335, 12.62},  // decisions in context, sent at once, 5
    {336, 0.19},  // decisions in context, sent at once, 6
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 463, 0.0078, 0.028, 0.0699},
    {BusKind::spi, 2, false, 6.14, -5.07, -9.38, 44, 0, 0, 463, 0.0069, 0.0256, 0.0686},
    {BusKind::usart_spi, 2, false, 16.98, -13.21, 1.19, 32, 0, 0, 60, 0.0067, 0.0287, 0.0483},
    {BusKind::parallel8, 2, false, -71.42, 5.76, -0.88, 24.01, -15.99, 3.74, 60, 0.0076, 0.0329, 0.0792},
    {BusKind::spi_timed, 3, false, -3.05, 48.71, -0.7, 54, 0, 0, 60, 0.0055, 0.0215, 0.0393},
    {BusKind::spi, 3, false, -2.42, 42.69, -2.23, 64, 0, 0, 60, 0.005, 0.0203, 0.0375},
    {BusKind::usart_spi, 3, false, 16.98, 35.88, 2.74, 48, 0, 0, 60, 0.0052, 0.0229, 0.041},
    {BusKind::parallel8, 2, true, -141.29, -0.43, -12.27, 10.06, -2.04, 0.82, 60, 0.0089, 0.0362, 0.0648},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.007;

}  // namespace dialplate::measured
