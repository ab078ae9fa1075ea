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
    {25, 5.12},  // header, 24
    {29, 164.32},  // header, 28
    {33, 157.39},  // value of type, 0
    {35, 13.88},  // value of type, 2
    {36, 154},  // value of type, 3
    {38, 1041.13},  // tone, 0
    {39, 29.87},  // tone, 1
    {40, 0.42},  // tone, 2
    {44, 22.78},  // page, 2
    {46, 248.13},  // page, 4
    {50, 28.44},  // page, 8
    {52, 513.48},  // group of fills, 0
    {53, 55.22},  // group of fills, 1
    {54, 40.58},  // rect of a fill
    {55, 235.06},  // group of texts, 0
    {56, 5.64},  // group of texts, 1
    {57, 0.07},  // group of texts, 2
    {60, 11.63},  // line of a text, 1
    {61, 15.38},  // text, 0
    {62, 119.96},  // text, 1
    {63, 29.35},  // readout, 0
    {64, 68.94},  // readout, 1
    {65, 362.14},  // readout, 2
    {68, 27.28},  // readout, 5
    {69, 62.75},  // readout, 6
    {70, 0.64},  // readout, 7
    {72, 327.6},  // readout, 9
    {74, 105.05},  // readout, 11
    {75, 16.63},  // readout, 12
    {76, 83.74},  // readout, 13
    {78, 365.99},  // readout, 15
    {79, 34.82},  // readout, 16
    {81, 37.21},  // readout, 18
    {83, 117.6},  // box, 0
    {84, 87.47},  // box, 1
    {95, 85.52},  // box, 12
    {96, 77.7},  // box, 13
    {97, 95.64},  // box, 14
    {98, 2.6},  // box, 15
    {99, 91.61},  // box, 16
    {103, 3.44},  // line of a box, 0
    {104, 985.44},  // line of a box, 1
    {105, 29.05},  // line of a box, 2
    {106, 27.02},  // meter, 0
    {107, 131.64},  // meter, 1
    {108, 38.63},  // meter, 2
    {115, 276.39},  // meter, 9
    {116, 246.72},  // meter, 10
    {117, 260.08},  // meter, 11
    {118, 13.25},  // meter, 12
    {128, 437.37},  // meter, 22
    {129, 93.4},  // meter, 23
    {130, 93.3},  // meter, 24
    {131, 2.77},  // meter, 25
    {132, 0.33},  // meter, 26
    {134, 72.79},  // scale, 1
    {140, 621.97},  // scale, 7
    {141, 295.81},  // scale, 8
    {143, 208.26},  // scale, 10
    {146, 309.51},  // scale, 13
    {147, 198.43},  // scale, 14
    {148, 230.32},  // scale, 15
    {149, 287.61},  // scale, 16
    {150, 25.93},  // scale, 17
    {151, 163.58},  // scale, 18
    {152, 1227.09},  // scale, 19
    {153, 1126.31},  // scale, 20
    {155, 464.33},  // scale, 22
    {157, 87.83},  // scale, 24
    {161, 233},  // scale, 28
    {165, 66.51},  // scale, 32
    {170, 122.2},  // picture item, 1
    {171, 421.82},  // picture item, 2
    {176, 9.82},  // picture item, 7
    {177, 0.12},  // picture item, 8
    {179, 157.53},  // picture item, 10
    {180, 3.86},  // picture item, 11
    {182, 27.14},  // plain face, 0
    {183, 84.98},  // plain face, 1
    {184, 26.51},  // plain face, 2
    {185, 865.61},  // plain face, 3
    {186, 23.55},  // plain face, 4
    {188, 56.52},  // plain face, 6
    {191, 29.45},  // face in runs, 1
    {192, 38.53},  // face in runs, 2
    {193, 495.85},  // face in runs, 3
    {194, 50.53},  // face in runs, 4
    {195, 1155.5},  // face in runs, 5
    {196, 126.15},  // face in runs, 6
    {198, 25.42},  // face in context, 0
    {199, 67.81},  // face in context, 1
    {200, 34.17},  // face in context, 2
    {202, 57.92},  // face in context, 4
    {203, 14.76},  // face in context, 5
    {207, 34.12},  // segment face, 1
    {208, 52.18},  // segment face, 2
    {210, 64.58},  // segment face, 4
    {211, 282.85},  // segment face, 5
    {212, 1.9},  // segment face, 6
    {214, 27.38},  // plain face in tones, 0
    {215, 31.4},  // plain face in tones, 1
    {216, 44.33},  // plain face in tones, 2
    {218, 155.56},  // plain face in tones, 4
    {220, 3.41},  // plain face in tones, 6
    {223, 173.85},  // face in tones in context, 1
    {224, 100.65},  // face in tones in context, 2
    {225, 288.17},  // face in tones in context, 3
    {227, 0.49},  // face in tones in context, 5
    {228, 94.86},  // face in tones in context, 6
    {230, 1.58},  // plain glyph, 0
    {231, 518.13},  // plain glyph, 1
    {234, 2.97},  // plain glyph in tones, 0
    {236, 0.4},  // metrics of a glyph in context, 0
    {238, 9.48},  // place of a picture
    {239, 251.42},  // picture, 0
    {243, 0.14},  // picture, 4
    {244, 147.39},  // picture, 5
    {245, 4.9},  // picture, 6
    {247, 0.1},  // picture, 8
    {248, 509.95},  // strip, 0
    {249, 4860.1},  // strip, 1
    {253, 569.89},  // window of the page
    {254, 747.37},  // window of a readout
    {255, 603.19},  // window of a box
    {256, 701.21},  // window of a meter
    {257, 210.85},  // window of a scale
    {258, 308.36},  // window of plain
    {260, 628.84},  // window of contexts
    {261, 928.69},  // window of enlarged contexts
    {262, 390.36},  // window of segments
    {265, 681.03},  // window of changed runs
    {266, 370.7},  // window of changed segments
    {267, 23.14},  // push for the page
    {268, 15.54},  // push for a readout
    {269, 12.34},  // push for a box
    {270, 22.1},  // push for a meter
    {271, 74.28},  // push for a scale
    {272, 25.49},  // push for plain
    {273, 30.94},  // push for runs
    {274, 28.78},  // push for contexts
    {275, 21.28},  // push for enlarged contexts
    {276, 48.88},  // push for segments
    {277, 34.07},  // push for plain tones
    {279, 53.61},  // push for changed runs
    {280, 48.78},  // push for changed segments
    {286, 66.41},  // push of nothing for plain
    {287, 33.75},  // push of nothing for runs
    {288, 63.44},  // push of nothing for contexts
    {292, 1107.65},  // push of nothing for tones in context
    {293, 126.89},  // push of nothing for changed runs
    {294, 574.54},  // push of nothing for changed segments
    {295, 0.77},  // window's row of the page
    {296, 20.63},  // window's row of a readout
    {297, 286.95},  // window's row of a box
    {298, 0.87},  // window's row of a meter
    {300, 66.3},  // window's row of plain
    {301, 5.34},  // window's row of runs
    {302, 40.23},  // window's row of contexts
    {303, 7.55},  // window's row of enlarged contexts
    {305, 214.85},  // window's row of plain tones
    {306, 52.31},  // window's row of tones in context
    {307, 100.77},  // window's row of changed runs
    {308, 22.08},  // window's row of changed segments
    {310, 3.12},  // row in runs: the same
    {312, 23.18},  // one of a run
    {313, 28.51},  // low bit of a run
    {314, 399.81},  // plain row: read
    {315, 126.03},  // plain row: blank
    {316, 26.19},  // plain bit
    {317, 116.44},  // plain stroke
    {319, 7.8},  // stroke sent
    {320, 341.81},  // decisions in context, 0
    {321, 201.36},  // decisions in context, 1
    {322, 27.16},  // decisions in context, 2
    {323, 6.08},  // decisions in context, 3
    {324, 11.84},  // decisions in context, 4
    {325, 33.22},  // decisions in context, 5
    {326, 17.82},  // decisions in context, 6
    {327, 329.07},  // decisions in context, enlarged, 0
    {328, 177.56},  // decisions in context, enlarged, 1
    {329, 7.22},  // decisions in context, enlarged, 2
    {330, 29.2},  // decisions in context, enlarged, 3
    {331, 19.17},  // decisions in context, enlarged, 4
    {332, 38.24},  // decisions in context, enlarged, 5
    {333, 19.99},  // decisions in context, enlarged, 6
    {334, 549.72},  // decisions in context, in tones, 0
    {336, 27.57},  // decisions in context, in tones, 2
    {337, 3.74},  // decisions in context, in tones, 3
    {338, 19.96},  // decisions in context, in tones, 4
    {340, 81.63},  // decisions in context, in tones, 6
    {341, 6.47},  // plain row in tones: read
    {342, 391.71},  // plain row in tones: blank
    {343, 57.93},  // plain pixel in tones
    {345, 526.22},  // segment row: end
    {346, 31.41},  // segment row: middle
    {348, 220.91},  // segment row: dots
    {349, 78.47},  // row at a corner
    {350, 25.18},  // column at a corner
    {351, 85.33},  // digit of a number
    {352, 16.74},  // byte of a number that loses a digit
    {353, 753.31},  // value on a meter
    {356, 196.95},  // tick passed over
    {358, 18.92},  // row compared
    {360, 34.32},  // bit of a run compared
    {361, 37.28},  // plain bit compared
    {363, 341.41},  // row of changed segments
    {364, 15.41},  // service
    {368, 24.14},  // row of a box that may be rounded
    {369, 6.49},  // push for a box that may be rounded
    {370, 2.76},  // row sent that may be enlarged
    {371, 174.57},  // plain glyph beside segments
    {372, 288.54},  // glyph in runs beside segments
    {379, 18.12},  // paint of a meter that may have blocks
    {380, 3.09},  // paint of a meter that may have a peak
    {381, 7.97},  // paint of a meter that may be upright
    {382, 309.92},  // meter that may have a peak
    {385, 6.15},  // cell of a readout that may have a sign
    {386, 39.05},  // scale that may be a tape
    {387, 96.1},  // value looked up beside meters
    {388, 157.95},  // number that may have a marked digit
    {389, 12.2},  // low bit of a run beside pictures
    {390, 23.56},  // plain pixel in tones beside contexts in tones
    {392, 0.33},  // decisions in context, sent at once, 1
    {395, 8.53},  // decisions in context, sent at once, 4
    {396, 0.04},  // decisions in context, sent at once, 5
    {397, 0.88},  // decisions in context, sent at once, 6
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
    {BusKind::spi_timed, 2, false, 0, 0, 0, 36, 0, 0, 856, 0.0051, 0.0188, 0.2215},
    {BusKind::spi, 2, false, 130.31, -1.05, -3.38, 44, 0, 0, 856, 0.0048, 0.0173, 0.2067},
    {BusKind::usart_spi, 2, false, 161.1, -9.17, -8.84, 32, 0, 0, 67, 0.006, 0.0143, 0.0254},
    {BusKind::parallel8, 2, false, 70.16, 9.64, -7.64, 24, -16, 4.06, 67, 0.0062, 0.0138, 0.027},
    {BusKind::spi_timed, 3, false, 14.99, 48.63, -13.4, 54, 0, 0, 67, 0.0035, 0.0101, 0.0198},
    {BusKind::spi, 3, false, 148.05, 46.59, -19.57, 63.97, 0, 0, 67, 0.0039, 0.0097, 0.0199},
    {BusKind::usart_spi, 3, false, 165.5, 39.73, -12.14, 48, 0, 0, 67, 0.0052, 0.0114, 0.021},
    {BusKind::parallel8, 2, true, -17.9, 3.58, -6.29, 10.02, -2.03, 0.4, 67, 0.0121, 0.0214, 0.0318},
};
// clang-format on

/// What the engine's own work takes more on a part with more than 128 KiB of flash: calls are longer.
inline constexpr const char* large_part = "ATmega2560";
inline constexpr double large_part_factor = 1.0219;

}  // namespace dialplate::measured
