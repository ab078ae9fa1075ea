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
    {27, 28.64},  // header, 26
    {33, 252.09},  // value of type, 0
    {35, 48.53},  // value of type, 2
    {36, 166.27},  // value of type, 3
    {38, 354.24},  // tone, 0
    {39, 20.63},  // tone, 1
    {40, 0.35},  // tone, 2
    {44, 0.26},  // page, 2
    {46, 34.2},  // page, 4
    {52, 533.22},  // group of fills, 0
    {53, 53.61},  // group of fills, 1
    {54, 19.98},  // rect of a fill
    {55, 247.62},  // group of texts, 0
    {56, 5.64},  // group of texts, 1
    {57, 0.07},  // group of texts, 2
    {59, 56.87},  // line of a text, 0
    {61, 53.59},  // text, 0
    {62, 58.44},  // text, 1
    {63, 336.51},  // readout, 0
    {65, 87.11},  // readout, 2
    {69, 1.5},  // readout, 6
    {70, 0.01},  // readout, 7
    {72, 414.95},  // readout, 9
    {74, 122.07},  // readout, 11
    {75, 148.5},  // readout, 12
    {76, 123.72},  // readout, 13
    {78, 197.38},  // readout, 15
    {79, 135.15},  // readout, 16
    {81, 38.18},  // readout, 18
    {83, 90.63},  // box, 0
    {84, 43.74},  // box, 1
    {85, 724.56},  // box, 2
    {90, 11.28},  // box, 7
    {91, 0.1},  // box, 8
    {95, 210.49},  // box, 12
    {96, 86.48},  // box, 13
    {97, 292.11},  // box, 14
    {98, 7.43},  // box, 15
    {99, 51.76},  // box, 16
    {104, 908.52},  // line of a box, 1
    {105, 26.57},  // line of a box, 2
    {106, 0.98},  // meter, 0
    {107, 65.32},  // meter, 1
    {108, 464.91},  // meter, 2
    {115, 245.75},  // meter, 9
    {116, 212.93},  // meter, 10
    {117, 226.58},  // meter, 11
    {118, 9.28},  // meter, 12
    {128, 120.05},  // meter, 22
    {129, 351.72},  // meter, 23
    {130, 116.87},  // meter, 24
    {131, 3.48},  // meter, 25
    {134, 108.31},  // scale, 1
    {140, 525.14},  // scale, 7
    {141, 340.94},  // scale, 8
    {143, 333.39},  // scale, 10
    {146, 253.9},  // scale, 13
    {147, 139.06},  // scale, 14
    {148, 173.86},  // scale, 15
    {149, 300.05},  // scale, 16
    {151, 124.55},  // scale, 18
    {152, 1463.09},  // scale, 19
    {153, 1468.76},  // scale, 20
    {155, 342.03},  // scale, 22
    {157, 49.82},  // scale, 24
    {165, 89.71},  // scale, 32
    {170, 108.08},  // picture item, 1
    {171, 442.98},  // picture item, 2
    {176, 9.66},  // picture item, 7
    {177, 0.12},  // picture item, 8
    {180, 123.9},  // plain face, 0
    {181, 123.45},  // plain face, 1
    {182, 35.09},  // plain face, 2
    {186, 51.29},  // plain face, 6
    {188, 75.07},  // face in runs, 1
    {189, 36.38},  // face in runs, 2
    {191, 465.33},  // face in runs, 4
    {192, 95.69},  // face in runs, 5
    {193, 114.42},  // face in runs, 6
    {198, 710.16},  // segment face, 4
    {201, 0.47},  // plain glyph, 0
    {202, 349.28},  // plain glyph, 1
    {203, 4.16},  // glyph in runs, 0
    {204, 13.8},  // glyph in runs, 1
    {205, 99.2},  // place of a picture
    {210, 3.77},  // picture, 4
    {211, 0.06},  // picture, 5
    {213, 53.31},  // picture, 7
    {214, 128.23},  // picture, 8
    {215, 369.28},  // strip, 0
    {217, 711.56},  // window of the page
    {218, 1016.53},  // window of a readout
    {219, 673.7},  // window of a box
    {220, 827.9},  // window of a meter
    {221, 183.01},  // window of a scale
    {225, 26.36},  // push for the page
    {226, 0.21},  // push for a readout
    {227, 19.6},  // push for a box
    {228, 25.19},  // push for a meter
    {229, 109.4},  // push for a scale
    {230, 25.54},  // push for plain
    {231, 28.36},  // push for runs
    {232, 37.9},  // push for segments
    {239, 57.95},  // push of nothing for runs
    {241, 0.9},  // window's row of the page
    {242, 29.37},  // window's row of a readout
    {243, 314.14},  // window's row of a box
    {244, 0.83},  // window's row of a meter
    {246, 85.29},  // window's row of plain
    {247, 78.48},  // window's row of runs
    {248, 395.95},  // window's row of segments
    {249, 215.41},  // row in runs: read
    {250, 35.63},  // row in runs: the same
    {251, 71.46},  // run
    {252, 33.41},  // one of a run
    {253, 19.91},  // low bit of a run
    {254, 405.35},  // plain row: read
    {255, 134.23},  // plain row: blank
    {256, 24.22},  // plain bit
    {257, 138.27},  // plain stroke
    {258, 9.49},  // row sent
    {259, 0.8},  // stroke sent
    {260, 691.02},  // segment row: end
    {261, 40.78},  // segment row: middle
    {262, 513.03},  // segment row: upright
    {263, 5.29},  // segment row: dots
    {264, 74.96},  // row at a corner
    {265, 26.16},  // column at a corner
    {266, 582.26},  // digit of a large number
    {267, 191.46},  // digit of a small number
    {268, 671.54},  // value on a meter
    {269, 231.66},  // tick passed over
    {270, 35.19},  // service
    {274, 5.55},  // row of a box that may be rounded
    {275, 0.84},  // push for a box that may be rounded
    {278, 293.03},  // glyph in runs beside segments
    {280, 8.65},  // row in runs beside plain
    {281, 56.07},  // plain row beside runs
    {283, 10},  // paint of a meter that may have blocks
    {284, 8.39},  // paint of a meter that may have a peak
    {285, 7.58},  // paint of a meter that may be upright
    {286, 296.1},  // meter that may have a peak
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 219, 0.0083, 0.0272, 0.0942},
    {BusKind::spi, 2, false, 2.66, -4.95, -4.51, 44, 0, 0, 58, 0.0078, 0.0296, 0.0499},
    {BusKind::usart_spi, 2, false, 23.13, -12.86, -1.79, 32, 0, 0, 58, 0.0098, 0.0327, 0.0538},
    {BusKind::parallel8, 2, false, -66.39, 6.1, -1.78, 24, -16, 3.96, 58, 0.0117, 0.0392, 0.0851},
    {BusKind::spi_timed, 3, false, 3.17, 49.03, -3.59, 54, 0, 0, 58, 0.0065, 0.0258, 0.0436},
    {BusKind::spi, 3, false, 5.34, 43.03, -6.74, 63.99, 0, 0, 58, 0.0058, 0.0239, 0.0417},
    {BusKind::usart_spi, 3, false, 23.83, 36.17, -0.67, 48, 0, 0, 58, 0.0075, 0.0264, 0.0453},
    {BusKind::parallel8, 2, true, -158.96, -0.13, 3.19, 10.02, -2.03, 0.62, 58, 0.0138, 0.0412, 0.0836},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0232;

}  // namespace dialplate::measured
