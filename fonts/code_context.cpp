#include "fonts/code_context.hpp"

#include "fonts/context_model.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <optional>

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

    // How many bytes at least have to stand before `following`, so that together, whatever is behind them, they
    // are a number in the interval.
    [[nodiscard]] std::size_t least_bytes(std::span<const std::uint8_t> following) const {
        std::size_t count = least_thinkable();
        while (!above_low(count, following))
            ++count;
        return count;
    }
    // The least number of so many bytes that is.
    [[nodiscard]] std::vector<std::uint8_t> shortest(
        std::span<const std::uint8_t> following) const {
        const std::size_t count = least_bytes(following);
        std::vector<std::uint8_t> bytes = first_bytes(count);
        if (*above_low(count, following) == 1) increment(bytes);
        return bytes;
    }
    // What the decisions are worth.
    [[nodiscard]] double bits() const {
        return static_cast<double>(low_.size()) - std::log2(static_cast<double>(range_));
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
    // For fewer, more than four bytes of what follows would have to suit by chance.
    [[nodiscard]] std::size_t least_thinkable() const {
        constexpr std::size_t width = 8, borrowed = 32;
        return low_.size() > width + borrowed ? (low_.size() - width - borrowed) / 8 : 0;
    }
    // 0 or 1: what has to be added to the first `count` bytes of low; nothing: they do not suffice.
    [[nodiscard]] std::optional<unsigned> above_low(std::size_t count,
                                                    std::span<const std::uint8_t> following) const {
        for (const unsigned above : {0U, 1U}) {
            if (above == 1) {
                std::vector<std::uint8_t> bytes = first_bytes(count);
                if (!increment(bytes)) break;
            }
            if (holds(count, above, following, 0x00) && holds(count, above, following, 0xFF))
                return above;
        }
        return std::nullopt;
    }
    // Whether the first `count` bytes of low and `above`, then `following`, then bytes of `filler`, are a number in
    // the interval.
    [[nodiscard]] bool holds(std::size_t count,
                             unsigned above,
                             std::span<const std::uint8_t> following,
                             std::uint8_t filler) const {
        // number - low, bit by bit from the top, as long as it is no more than the range can be.
        const std::size_t known = 8 * count;
        long difference = known > low_.size() ? 0 : static_cast<long>(above);
        for (std::size_t i = known; i < low_.size(); ++i) {
            const std::size_t byte = i / 8 - count;
            const std::uint8_t value = byte < following.size() ? following[byte] : filler;
            difference = 2 * difference + (value >> (7 - i % 8) & 1) - low_[i];
            if (difference > 256 || difference < -1) return false;
        }
        return difference >= 0 && difference < static_cast<long>(range_);
    }

    std::vector<std::uint8_t> low_ = std::vector<std::uint8_t>(8);  // bits, highest first
    unsigned range_ = 255;
};

Interval interval_of(const Bitmap& bitmap, const ContextTable& table) {
    Interval interval;
    const auto decide = [&](unsigned context, bool ink) {
        interval.decide(table[context], ink);
        return ink;
    };
    walk_contexts(bitmap.width, bitmap.height, bitmap.tones, &bitmap, decide);
    return interval;
}

// The first bytes of what stands behind the stream that is being written.
class Following {
public:
    [[nodiscard]] std::span<const std::uint8_t> bytes() const { return bytes_; }
    void put_before(const std::vector<std::uint8_t>& stream) {
        bytes_.insert(bytes_.begin(), stream.begin(), stream.end());
        // No interval reaches further into them.
        constexpr std::size_t most = 8;
        if (bytes_.size() > most) bytes_.resize(most);
    }

private:
    std::vector<std::uint8_t> bytes_;
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
                                                      const ContextTable& table,
                                                      const Between* between) {
    std::vector<std::vector<std::uint8_t>> streams(bitmaps.size());
    Following following;
    for (std::size_t i = bitmaps.size(); i-- > 0;) {
        streams[i] = interval_of(*bitmaps[i], table).shortest(following.bytes());
        following.put_before(streams[i]);
        if (between != nullptr && i > 0)
            following.put_before(
                between->bytes(between->group(*bitmaps[i - 1]), *bitmaps[i], streams[i].size()));
    }
    return streams;
}

std::size_t longest_stream(const std::vector<const Bitmap*>& bitmaps, const ContextTable& table) {
    std::size_t most = 0;
    for (const Bitmap* bitmap : bitmaps)
        most = std::max(most, interval_of(*bitmap, table).least_bytes({}));
    return most;
}

std::vector<std::size_t> short_order(const std::vector<const Bitmap*>& bitmaps,
                                     std::size_t fixed,
                                     const ContextTable& table,
                                     const Between* between,
                                     int first_group) {
    std::vector<Interval> intervals;
    std::vector<int> groups;
    for (const Bitmap* bitmap : bitmaps) {
        intervals.push_back(interval_of(*bitmap, table));
        groups.push_back(between != nullptr ? between->group(*bitmap) : first_group);
    }
    std::vector<std::size_t> order(bitmaps.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    Following streams;                // from the one placed last
    std::optional<std::size_t> last;  // that one
    std::size_t last_bytes = 0;
    // From the last to the first: of those that are left, the one that saves most before what follows.
    for (std::size_t left = order.size(); left > fixed; --left) {
        const auto begin = order.begin() + static_cast<std::ptrdiff_t>(fixed),
                   end = order.begin() + static_cast<std::ptrdiff_t>(left);
        const auto any = [&](auto is) {
            return std::any_of(begin, end, [&](std::size_t i) { return is(groups[i]); });
        };
        const bool goes_on = last && any([&](int group) { return group == groups[*last]; });
        const bool others = any([&](int group) { return group != first_group; });
        const auto may = [&](int group) {
            return goes_on ? group == groups[*last] : !others || group != first_group;
        };
        std::map<int, std::pair<Following, std::size_t>> by_group;  // what follows, bytes between
        auto best = end - 1;
        double most = -std::numeric_limits<double>::infinity();
        for (auto it = end; it-- != begin;) {
            if (!may(groups[*it])) continue;
            const auto [known, is_new] = by_group.try_emplace(groups[*it], streams, std::size_t{0});
            auto& [following, bytes_between] = known->second;
            if (is_new && between != nullptr && last) {
                const std::vector<std::uint8_t> bytes =
                    between->bytes(groups[*it], *bitmaps[*last], last_bytes);
                bytes_between = bytes.size();
                following.put_before(bytes);
            }
            const Interval& interval = intervals[*it];
            const double saved =
                interval.bits() / 8 -
                static_cast<double>(interval.least_bytes(following.bytes()) + bytes_between);
            if (saved > most) {
                most = saved;
                best = it;
            }
        }
        std::rotate(best, best + 1, end);
        last = order[left - 1];
        streams = by_group.at(groups[*last]).first;
        const std::vector<std::uint8_t> stream = intervals[*last].shortest(streams.bytes());
        streams.put_before(stream);
        last_bytes = stream.size();
    }
    return order;
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
