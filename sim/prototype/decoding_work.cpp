// What decoding a bitmap of the image takes, counted by decoding it.
#include "sim/prototype/image_map.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

/// The bits of an image from a place on, bit 7 first.
class BitReader {
public:
    BitReader(const std::vector<std::uint8_t>& image, std::size_t at)
        : image_(image), bit_(8 * at) {}
    bool next() {
        const std::size_t at = bit_ / 8;
        const bool set = at < image_.size() && (image_[at] >> (7 - bit_ % 8) & 1) != 0;
        ++bit_;
        return set;
    }

private:
    const std::vector<std::uint8_t>& image_;
    std::size_t bit_;
};

void add_runs(const std::vector<std::uint8_t>& image, const CodedBitmap& bitmap, EngineWork& work) {
    auto& times = work.times;
    BitReader bits(image, bitmap.data);
    int strokes = 0;
    for (int y = 0; y < bitmap.height; ++y) {
        if (y != 0 && bits.next()) {
            ++times[work::runs_same];
        } else {
            ++times[work::runs_row];
            int runs = 0;
            for (int left = bitmap.width; left > 0; ++runs) {
                const int k = runs % 2 == 0 ? bitmap.parameters & 15 : bitmap.parameters >> 4;
                int length = 0;
                while (length <= left && bits.next()) {
                    ++length;
                    ++times[work::runs_one];
                }
                for (int i = 0; i < k; ++i) {
                    length = 2 * length + (bits.next() ? 1 : 0);
                    ++times[work::runs_low];
                }
                ++times[work::runs_run];
                if (length > left || (length == 0 && runs != 0)) length = left;
                left -= length;
            }
            strokes = (runs + 1) / 2;
        }
        times[work::sent_row] += bitmap.times;
        times[work::sent_stroke] += bitmap.times * strokes;
    }
}

void add_plain(const std::vector<std::uint8_t>& image,
               const CodedBitmap& bitmap,
               EngineWork& work) {
    auto& times = work.times;
    BitReader bits(image, bitmap.data);
    for (int y = 0; y < bitmap.height; ++y) {
        int strokes = 1;
        if (y < bitmap.inked_top || y >= bitmap.inked_top + bitmap.inked_height) {
            ++times[work::plain_blank];
        } else {
            ++times[work::plain_row];
            times[work::plain_bit] += bitmap.inked_width;
            bool ink = false;
            int strokes_begun = 0;
            for (int x = 0; x < bitmap.inked_width; ++x) {
                if (bits.next() != ink) {
                    ink = !ink;
                    ++times[work::plain_change];
                    strokes_begun += ink ? 1 : 0;
                }
            }
            // Ground behind the last stroke is another one, without ink.
            const bool ends_in_ground =
                !ink || bitmap.inked_left + bitmap.inked_width < bitmap.width;
            strokes = strokes_begun + (ends_in_ground ? 1 : 0);
        }
        times[work::sent_row] += bitmap.times;
        times[work::sent_stroke] += bitmap.times * strokes;
    }
}

void add_plain_tones(const std::vector<std::uint8_t>& image,
                     const CodedBitmap& bitmap,
                     EngineWork& work) {
    auto& times = work.times;
    BitReader bits(image, bitmap.data);
    int last = 0;
    for (int y = 0; y < bitmap.height; ++y) {
        if (y < bitmap.inked_top || y >= bitmap.inked_top + bitmap.inked_height) {
            ++times[work::tones_blank];
            times[work::tones_ground] += bitmap.width;
            times[work::tones_change] += last != 0 ? 1 : 0;
            last = 0;
            continue;
        }
        ++times[work::tones_row];
        times[work::tones_pixel] += bitmap.inked_width;
        times[work::tones_ground] += bitmap.width - bitmap.inked_width;
        for (int x = 0; x < bitmap.inked_width; ++x) {
            const int first = bits.next() ? 2 : 0;
            const int both = first + (bits.next() ? 1 : 0);
            times[work::tones_change] += both != last ? 1 : 0;
            last = both;
        }
    }
}

/// Decides the pixels of a glyph as ui/image.md, "Contexts", has it, and counts.
class Decisions {
public:
    Decisions(const std::vector<std::uint8_t>& image,
              const CodedBitmap& bitmap,
              std::int32_t* times)
        : image_(image),
          bits_(image, bitmap.data + 1U),
          bitmap_(bitmap),
          times_(times),
          value_(image[bitmap.data]) {}

    void count() {
        const int columns = bitmap_.width;
        std::vector<std::uint8_t> above(static_cast<std::size_t>(columns) + 4, 0);
        std::vector<std::uint8_t> above_that(above.size(), 0);
        std::fill(above_that.begin() + 2, above_that.end() - 2, std::uint8_t{1});
        edge_left(above);
        edge_left(above_that);
        int repeated = 0;
        int bank = 0;
        for (int y = 0; y < bitmap_.height; ++y) {
            times_[work::columns_sent] += columns * bitmap_.times;
            if (decide(context_model::pixels + repeated + bank)) {
                ++times_[work::rows_same];
                if (repeated == 0) times_[work::columns_renewed] += columns;
                above_that = above;
                repeated = std::min<int>(repeated + 1, context_model::most_repeats);
                continue;
            }
            repeated = 0;
            bank = 0;
            ++times_[work::rows_decided];
            times_[work::pixels_decided] += columns;
            std::vector<std::uint8_t> row = decided_row(above, above_that, 0);
            if (std::find(row.begin() + 2, row.end(), 1) != row.end()) bank = context_model::bank;
            above_that = std::exchange(above, std::move(row));
            if ((bitmap_.packing & packing::tones) != 0) {
                times_[work::pixels_decided] += columns;
                decided_row(above, above_that, context_model::middle);
            }
        }
    }

private:
    static void edge_left(std::vector<std::uint8_t>& row) { row[0] = row[1] = 1; }

    std::vector<std::uint8_t> decided_row(const std::vector<std::uint8_t>& above,
                                          const std::vector<std::uint8_t>& above_that,
                                          int first) {
        std::vector<std::uint8_t> row(above.size(), 0);
        for (int x = 0; x < bitmap_.width; ++x) {
            const std::uint8_t* a = above.data() + x + 2;
            const std::uint8_t* b = above_that.data() + x + 2;
            const int straight = x + 1 < bitmap_.width ? b[0] : 0;
            const int context = row[static_cast<std::size_t>(x) + 1] << 6 | a[1] << 5 | a[0] << 4 |
                                a[-1] << 3 | a[-2] << 2 | straight << 1 | b[-1];
            const bool ink = decide(first + context);
            row[static_cast<std::size_t>(x) + 2] = ink ? 1 : 0;
            times_[work::pixels_inked] += ink ? 1 : 0;
        }
        edge_left(row);
        return row;
    }

    bool decide(int context) {
        const int chance = image_[static_cast<std::size_t>(header::bytes + context)];
        const int split = range_ * chance >> 8;
        const bool ink = value_ >= split;
        value_ -= ink ? split : 0;
        range_ = ink ? range_ - split : split;
        for (; range_ < 128 && range_ > 0; range_ *= 2) {
            value_ = 2 * value_ + (bits_.next() ? 1 : 0);
            ++times_[work::bits_taken];
        }
        return ink;
    }

    const std::vector<std::uint8_t>& image_;
    BitReader bits_;
    const CodedBitmap& bitmap_;
    std::int32_t* times_;
    int value_, range_ = 255;
};

}  // namespace

void add_decoding(const std::vector<std::uint8_t>& image,
                  const CodedBitmap& bitmap,
                  EngineWork& work) {
    if (bitmap.packing == packing::plain) {
        add_plain(image, bitmap, work);
    } else if (bitmap.packing == (packing::plain | packing::tones)) {
        add_plain_tones(image, bitmap, work);
    } else if ((bitmap.packing & ~int{packing::tones}) == packing::context) {
        const int first = bitmap.packing != packing::context ? work::context_tones
                          : bitmap.times > 1                 ? work::large_context
                                                             : work::context;
        Decisions(image, bitmap, work.times.data() + first).count();
    } else {
        add_runs(image, bitmap, work);
    }
}

}  // namespace dialplate
