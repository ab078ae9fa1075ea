#include "fonts/code_context.hpp"

#include "fonts/context_model.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace dialplate {

using namespace fonts;

namespace {

constexpr unsigned whole = 256;  // the chance 1
static_assert(std::tuple_size_v<ContextTable> == context_model::all);

// The interval [low, low + range) that the decisions so far leave, as a number of so many bits.
class Interval {
public:
    void decide(std::uint8_t ground, bool ink) {
        const unsigned split = range_ * ground / whole;
        if (ink) {
            add(split);
            range_ -= split;
        } else {
            range_ = split;
        }
        while (range_ < 128) {
            low_.push_back(0);
            range_ *= 2;
        }
    }

    // The shortest bytes that, with `following` behind them and whatever behind those, are a number in the
    // interval.
    [[nodiscard]] std::vector<std::uint8_t> shortest(
        std::span<const std::uint8_t> following) const {
        for (std::size_t count = 0;; ++count) {
            std::vector<std::uint8_t> bytes = first_bytes(count);
            for (int above = 0; above < 2; ++above) {
                if (above == 1 && !increment(bytes)) break;
                if (holds(bytes, following, 0x00) && holds(bytes, following, 0xFF)) return bytes;
            }
        }
    }

private:
    void add(unsigned number) {
        for (std::size_t i = low_.size(); i-- > 0 && number != 0;) {
            number += low_[i];
            low_[i] = static_cast<std::uint8_t>(number & 1U);
            number >>= 1U;
        }
    }
    [[nodiscard]] std::vector<std::uint8_t> first_bytes(std::size_t count) const {
        std::vector<std::uint8_t> bytes(count);
        for (std::size_t i = 0; i < std::min(8 * count, low_.size()); ++i)
            if (low_[i] != 0)
                bytes[i / 8] = static_cast<std::uint8_t>(bytes[i / 8] | 0x80U >> i % 8);
        return bytes;
    }
    static bool increment(std::vector<std::uint8_t>& bytes) {
        for (std::size_t i = bytes.size(); i-- > 0;)
            if (++bytes[i] != 0) return true;
        return false;
    }
    // Whether `bytes`, then `following`, then bytes of `filler`, are in the interval.
    [[nodiscard]] bool holds(const std::vector<std::uint8_t>& bytes,
                             std::span<const std::uint8_t> following,
                             std::uint8_t filler) const {
        // number - low, bit by bit from the top, as long as it is no more than the range can be.
        long difference = 0;
        for (std::size_t i = 0; i < low_.size(); ++i) {
            const std::size_t byte = i / 8;
            const std::uint8_t value = byte < bytes.size() ? bytes[byte]
                                       : byte - bytes.size() < following.size()
                                           ? following[byte - bytes.size()]
                                           : filler;
            difference = 2 * difference + (value >> (7 - i % 8) & 1) - low_[i];
            if (difference > 256 || difference < -1) return false;
        }
        return difference >= 0 && difference < static_cast<long>(range_);
    }

    std::vector<std::uint8_t> low_ = std::vector<std::uint8_t>(8);  // bits, highest first
    unsigned range_ = 255;
};

}  // namespace

ContextTable train_contexts(const std::vector<const Bitmap*>& bitmaps) {
    std::array<std::array<double, 2>, context_model::all> seen{};
    for (const Bitmap* bitmap : bitmaps) {
        const auto count = [&](unsigned context, bool ink) {
            seen[context][ink ? 1 : 0] += 1;
            return ink;
        };
        walk_contexts(bitmap->width, bitmap->height, bitmap->tones, bitmap, count);
    }
    ContextTable table{};
    for (std::size_t i = 0; i < table.size(); ++i) {
        const auto [ground, ink] = seen[i];
        // A context never seen is even; one seen on one side only keeps a small chance for the other.
        const double chance = ground + ink == 0 ? 0.5 : ground / (ground + ink);
        table[i] = static_cast<std::uint8_t>(std::clamp(std::lround(whole * chance),
                                                        long{context_model::least_chance},
                                                        long{whole} - context_model::least_chance));
    }
    return table;
}

namespace fonts {

std::vector<std::vector<std::uint8_t>> write_contexts(const std::vector<const Bitmap*>& bitmaps,
                                                      const ContextTable& table) {
    std::vector<std::vector<std::uint8_t>> streams(bitmaps.size());
    std::vector<std::uint8_t> following;
    for (std::size_t i = bitmaps.size(); i-- > 0;) {
        Interval interval;
        const Bitmap& bitmap = *bitmaps[i];
        const auto decide = [&](unsigned context, bool ink) {
            interval.decide(table[context], ink);
            return ink;
        };
        walk_contexts(bitmap.width, bitmap.height, bitmap.tones, &bitmap, decide);
        streams[i] = interval.shortest(following);
        following.insert(following.begin(), streams[i].begin(), streams[i].end());
    }
    return streams;
}

Bitmap read_contexts(std::span<const std::uint8_t> bytes,
                     int width,
                     int height,
                     bool tones,
                     const ContextTable& table) {
    BitReader bits(bytes);
    unsigned value = bits.get_bits(8), range = 255;
    return walk_contexts(width, height, tones, nullptr, [&](unsigned context, bool) {
        const unsigned split = range * table[context] / whole;
        const bool ink = value >= split;
        if (ink) {
            value -= split;
            range -= split;
        } else {
            range = split;
        }
        while (range < 128) {
            range *= 2;
            value = value * 2 + (bits.get() ? 1 : 0);
        }
        return ink;
    });
}

}  // namespace fonts
}  // namespace dialplate
