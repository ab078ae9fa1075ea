// The packings once more, in the plainest way: bits as text. Slow, obvious, for tests alone.
#pragma once

#include "fonts/face.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

inline std::string slow_rice(int n, int k) {
    std::string bits(static_cast<std::size_t>(n / (1 << k)), '1');
    bits += '0';
    for (int bit = k - 1; bit >= 0; --bit)
        bits += (n / (1 << bit)) % 2 != 0 ? '1' : '0';
    return bits;
}

/// ui/image.md, "Face", packing `runs`, without the advance.
inline std::string slow_runs(const Bitmap& bitmap, int white, int black) {
    std::string bits, above;
    for (int y = 0; y < bitmap.height; ++y) {
        std::string row;
        for (int x = 0; x < bitmap.width; ++x)
            row += bitmap.ink(x, y) ? '#' : '.';
        if (y > 0) bits += row == above ? '1' : '0';
        if (y == 0 || row != above) {
            char colour = '.';
            for (std::size_t x = 0; x < row.size();) {
                int run = 0;
                for (; x < row.size() && row[x] == colour; ++x)
                    ++run;
                bits += slow_rice(run, colour == '#' ? black : white);
                colour = colour == '#' ? '.' : '#';
            }
        }
        above = row;
    }
    return bits;
}

inline std::vector<std::uint8_t> bytes_of(std::string bits) {
    while (bits.size() % 8 != 0)
        bits += '0';
    std::vector<std::uint8_t> bytes;
    for (std::size_t at = 0; at < bits.size(); at += 8)
        bytes.push_back(static_cast<std::uint8_t>(std::stoi(bits.substr(at, 8), nullptr, 2)));
    return bytes;
}

}  // namespace dialplate
