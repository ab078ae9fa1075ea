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
    {27, 13.76},  // header, 26
    {33, 178.96},  // value of type, 0
    {34, 8.06},  // value of type, 1
    {36, 180.27},  // value of type, 3
    {38, 720.23},  // tone, 0
    {39, 23.59},  // tone, 1
    {40, 0.35},  // tone, 2
    {46, 272.54},  // page, 4
    {52, 532.77},  // group of fills, 0
    {53, 51.69},  // group of fills, 1
    {54, 22.7},  // rect of a fill
    {55, 161.03},  // group of texts, 0
    {56, 3.42},  // group of texts, 1
    {57, 0.04},  // group of texts, 2
    {59, 74.26},  // line of a text, 0
    {61, 75.28},  // text, 0
    {62, 60.3},  // text, 1
    {63, 365.39},  // readout, 0
    {72, 513.48},  // readout, 9
    {74, 142.36},  // readout, 11
    {77, 73.02},  // readout, 14
    {79, 194.71},  // readout, 16
    {81, 19.74},  // readout, 18
    {83, 117.54},  // box, 0
    {84, 49.46},  // box, 1
    {85, 304.76},  // box, 2
    {90, 5.53},  // box, 7
    {91, 0.06},  // box, 8
    {95, 232.45},  // box, 12
    {96, 52.04},  // box, 13
    {97, 231.07},  // box, 14
    {98, 6.31},  // box, 15
    {99, 118.3},  // box, 16
    {104, 1003.59},  // line of a box, 1
    {105, 30.14},  // line of a box, 2
    {106, 113.04},  // meter, 0
    {107, 53.36},  // meter, 1
    {108, 390.22},  // meter, 2
    {115, 248.97},  // meter, 9
    {116, 217.54},  // meter, 10
    {117, 238.82},  // meter, 11
    {118, 8.87},  // meter, 12
    {128, 299.35},  // meter, 22
    {129, 215.48},  // meter, 23
    {130, 98.85},  // meter, 24
    {131, 2.92},  // meter, 25
    {134, 161.74},  // scale, 1
    {140, 368.55},  // scale, 7
    {141, 307.05},  // scale, 8
    {143, 336.19},  // scale, 10
    {146, 295.75},  // scale, 13
    {147, 191.26},  // scale, 14
    {148, 74.99},  // scale, 15
    {149, 316.46},  // scale, 16
    {152, 1443.01},  // scale, 19
    {153, 1276.58},  // scale, 20
    {155, 488.03},  // scale, 22
    {157, 48.65},  // scale, 24
    {161, 27.54},  // scale, 28
    {165, 114.63},  // scale, 32
    {169, 125.09},  // picture item, 0
    {170, 57.07},  // picture item, 1
    {171, 533.87},  // picture item, 2
    {176, 13.52},  // picture item, 7
    {177, 0.17},  // picture item, 8
    {180, 68.37},  // plain face, 0
    {181, 169},  // plain face, 1
    {186, 31.57},  // plain face, 6
    {188, 22.92},  // face in runs, 0
    {189, 101.79},  // face in runs, 1
    {190, 14.91},  // face in runs, 2
    {192, 34.3},  // face in runs, 4
    {193, 15.06},  // face in runs, 5
    {194, 67.84},  // face in runs, 6
    {198, 55.77},  // face in context, 2
    {199, 31.21},  // face in context, 3
    {200, 1.23},  // face in context, 4
    {202, 6.62},  // face in context, 6
    {203, 0.16},  // face in context, 7
    {208, 92.09},  // segment face, 4
    {209, 47.45},  // segment face, 5
    {210, 0.99},  // segment face, 6
    {212, 0.62},  // plain glyph, 0
    {213, 170.99},  // plain glyph, 1
    {214, 5.94},  // glyph in runs, 0
    {215, 479.04},  // glyph in runs, 1
    {216, 15.31},  // metrics of a glyph in context
    {217, 357.17},  // glyph in context
    {218, 5.35},  // place of a picture
    {223, 0.8},  // picture, 4
    {224, 0.02},  // picture, 5
    {226, 104.6},  // picture, 7
    {227, 122.9},  // picture, 8
    {228, 686.54},  // strip, 0
    {229, 533.62},  // strip, 1
    {230, 708.37},  // window of the page
    {231, 1050.77},  // window of a readout
    {232, 668.62},  // window of a box
    {233, 832.42},  // window of a meter
    {234, 191.28},  // window of a scale
    {235, 148.37},  // window of plain
    {236, 180.02},  // window of runs
    {237, 420.94},  // window of contexts
    {239, 1075.89},  // window of segments
    {240, 26.57},  // push for the page
    {241, 0.59},  // push for a readout
    {242, 1.64},  // push for a box
    {243, 25.29},  // push for a meter
    {244, 100.18},  // push for a scale
    {245, 31.14},  // push for plain
    {246, 30.69},  // push for runs
    {247, 43.66},  // push for contexts
    {248, 55.59},  // push for enlarged contexts
    {249, 29.88},  // push for segments
    {260, 0.9},  // window's row of the page
    {261, 22.98},  // window's row of a readout
    {262, 255.26},  // window's row of a box
    {263, 1.39},  // window's row of a meter
    {265, 76.29},  // window's row of plain
    {266, 77.51},  // window's row of runs
    {268, 23.82},  // window's row of enlarged contexts
    {269, 396.28},  // window's row of segments
    {270, 221.09},  // row in runs: read
    {271, 34.59},  // row in runs: the same
    {272, 69.75},  // run
    {273, 23.37},  // one of a run
    {274, 19.36},  // low bit of a run
    {275, 417.67},  // plain row: read
    {276, 170.27},  // plain row: blank
    {277, 24.12},  // plain bit
    {278, 132.43},  // plain stroke
    {279, 8.91},  // row sent
    {281, 308.69},  // decisions in context, 0
    {282, 313.73},  // decisions in context, 1
    {283, 40.87},  // decisions in context, 2
    {285, 6.12},  // decisions in context, 4
    {286, 12.1},  // decisions in context, 5
    {287, 9.84},  // decisions in context, 6
    {288, 145.5},  // decisions in context, enlarged, 0
    {289, 459.09},  // decisions in context, enlarged, 1
    {290, 64.65},  // decisions in context, enlarged, 2
    {293, 16.93},  // decisions in context, enlarged, 5
    {294, 3.63},  // decisions in context, enlarged, 6
    {295, 705.29},  // segment row: end
    {296, 42.23},  // segment row: middle
    {297, 557.19},  // segment row: upright
    {298, 13.88},  // segment row: dots
    {299, 85.11},  // row at a corner
    {300, 25.18},  // column at a corner
    {301, 547.98},  // digit of a large number
    {302, 170.69},  // digit of a small number
    {303, 751.88},  // value on a meter
    {305, 49.04},  // cell of a readout that is drawn
    {306, 223.37},  // tick passed over
    {307, 42.92},  // service
    {311, 66.15},  // row of a box that may be rounded
    {312, 17.75},  // push for a box that may be rounded
    {314, 123.09},  // plain glyph beside segments
    {315, 20.77},  // glyph in runs beside segments
    {316, 84.04},  // glyph in runs beside plain
    {318, 141.77},  // glyph in runs beside contexts
    {319, 22.24},  // row in runs beside plain
    {320, 62.3},  // plain row beside runs
    {322, 35.61},  // paint of a meter that may have blocks
    {323, 4.38},  // paint of a meter that may have a peak
    {324, 8.1},  // paint of a meter that may be upright
    {325, 262.89},  // meter that may have a peak
    {328, 13.9},  // cell of a readout that may have a sign
    {330, 398.06},  // decisions in context, sent at once, 0
    {331, 274.31},  // decisions in context, sent at once, 1
    {332, 4.51},  // decisions in context, sent at once, 2
    {334, 11.56},  // decisions in context, sent at once, 4
    {335, 9.13},  // decisions in context, sent at once, 5
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 463, 0.0076, 0.0288, 0.0651},
    {BusKind::spi, 2, false, 6.08, -5.06, -9.35, 43.99, 0, 0, 463, 0.0069, 0.0269, 0.0736},
    {BusKind::usart_spi, 2, false, 16.17, -12.97, 1.86, 32, 0, 0, 60, 0.0072, 0.0345, 0.0559},
    {BusKind::parallel8, 2, false, -72.41, 6.09, 0.19, 24, -15.99, 3.23, 60, 0.0089, 0.0398, 0.0853},
    {BusKind::spi_timed, 3, false, -3.69, 48.99, -0.24, 54, 0, 0, 60, 0.0056, 0.026, 0.0455},
    {BusKind::spi, 3, false, -2.76, 42.98, -2.12, 64, 0, 0, 60, 0.0051, 0.0238, 0.0435},
    {BusKind::usart_spi, 3, false, 16.26, 36.16, 3.29, 48, 0, 0, 60, 0.0056, 0.0276, 0.0475},
    {BusKind::parallel8, 2, true, -142.12, -0.16, -11.49, 10.06, -2.05, 0.37, 60, 0.009, 0.0452, 0.0711},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0071;

}  // namespace dialplate::measured
