#include "sim/image/digit_time.hpp"

#include "sim/image/decoder_sizes.hpp"
#include "ui/changed_runs.hpp"
#include "ui/glyph.hpp"
#include "ui/image_format.hpp"
#include "ui/parts.hpp"

#include <algorithm>

namespace dialplate {
namespace {

/// What a bus was told.
struct Tally {
    int windows = 0, pushes = 0, pixels = 0;
    void window(std::uint16_t, std::uint16_t, std::uint16_t, std::uint16_t) { ++windows; }
    void push(std::uint16_t, std::uint16_t count) {
        ++pushes;
        pixels += count;
    }
};

/// An image that counts what is read of it.
class CountedBytes {
public:
    CountedBytes(const std::vector<std::uint8_t>& bytes, int& reads)
        : bytes_(&bytes), reads_(&reads) {}
    std::uint8_t u8(std::uint16_t at) const {
        ++*reads_;
        return at < bytes_->size() ? (*bytes_)[at] : std::uint8_t{0};
    }

private:
    const std::vector<std::uint8_t>* bytes_;
    int* reads_;
};

struct CountedParts : EveryPart {
    using Bytes = CountedBytes;
};

/// Cycles of the ATmega328P beside the pixels, fitted by hand to tests/firmware/digit_times: near enough for a
/// choice. What decoding takes goes with the bytes that are read.
struct Weights {
    int byte_of_change, byte_of_whole;
};
constexpr Weights of_runs{185, 70}, of_plain{295, 430};
constexpr int per_window = 340, per_changed_window = 450, per_push = 58, per_digit = 3500;
constexpr PixelTimes timed_pixel{36.0, 36.0, true};
constexpr double usart_decided_pixel = 38.0;
// In context: a pixel, a row, and a byte of its stream; where the driver sends while it decides (Sending in
// decoder_sizes.hpp), and with the others.
struct ContextWeights {
    int pixel, row, byte;
};
constexpr ContextWeights sent_at_once{0, 50, 65}, handed_on{45, 390, 110};
constexpr int per_repeated_row = 245;  // of the glass, of a bitmap in context that is enlarged
constexpr int per_segment_row = 230;

class WeighedFace {
public:
    WeighedFace(const std::vector<std::uint8_t>& bytes, const PixelTimes& pixel)
        : bytes_(bytes), pixel_(pixel), rom_(CountedBytes(bytes, reads_)) {}

    double change(std::uint8_t was, std::uint8_t is) {
        Tally tally;
        reads_ = 0;
        ChangedRuns<Tally, CountedParts> changes(tally, Point{0, 0}, times(), Colours{1, 0});
        Rows before(rom_, 0, metrics(was));
        Rows now(rom_, 0, metrics(is));
        changes.send(before, now, bytes_[face::advance], bytes_[face::height]);
        return per_digit + per_changed_window * tally.windows + pixel_.sent * tally.pixels +
               (pixel_.by_edges ? 0 : per_push * tally.pushes) + weights().byte_of_change * reads_;
    }

    double whole(std::uint8_t is) {
        if (bytes_[face::packing] == packing::context) return whole_in_context(is);
        if (bytes_[face::packing] == packing::segment) return whole_in_segments();
        Tally tally;
        reads_ = 0;
        tally.window(0, 0, 0, 0);
        RowSender<Tally> out(tally, Colours{1, 0});
        Rows rows(rom_, 0, metrics(is));
        Edges edges;
        const std::uint8_t height = bytes_[face::height], width = bytes_[face::advance];
        for (int y = 0; y < height;) {
            const int same = rows.read(edges);
            Row row(times());
            std::uint8_t column = 0;
            bool ink = false;
            for (const std::uint8_t* edge = edges.at; *edge != Edges::end; ++edge, ink = !ink) {
                row.add(ink, static_cast<std::uint16_t>(*edge - column));
                column = *edge;
            }
            row.add(ink, static_cast<std::uint16_t>(width - column));
            for (int i = 0; i < same * times(); ++i)
                out.send(row);
            y += same;
        }
        out.finish();
        return per_digit + per_window + pixel_.sent * tally.pixels + per_push * tally.pushes +
               weights().byte_of_whole * reads_;
    }

private:
    using Rows = ChangedRuns<Tally, CountedParts>::Rows;

    [[nodiscard]] double whole_in_segments() const {
        const int width = bytes_[face::advance] + bytes_[face::segment_gap];
        return per_digit + per_window + pixel_.sent * width * bytes_[face::height] +
               per_segment_row * bytes_[face::height];
    }
    [[nodiscard]] double whole_in_context(std::uint8_t is) const {
        const FaceMetrics<Rom<CountedBytes>> metrics{rom_, 0};
        const int bytes = metrics.of_context(byte(is + 1U)).at - metrics.of_context(is).at;
        const int pixels = bytes_[face::advance] * bytes_[face::height] * times() * times();
        const bool at_once = pixel_.decided && times() == 1;
        const ContextWeights& weights = at_once ? sent_at_once : handed_on;
        return per_digit + per_window + (at_once ? *pixel_.decided : pixel_.sent) * pixels +
               weights.pixel * bytes_[face::advance] * bytes_[face::height] +
               weights.row * bytes_[face::height] +
               per_repeated_row * (times() - 1) * bytes_[face::height] + weights.byte * bytes;
    }
    [[nodiscard]] std::uint8_t times() const {
        return bytes_[face::enlarged] & face::most_enlarged;
    }
    [[nodiscard]] Weights weights() const {
        return bytes_[face::packing] == packing::plain ? of_plain : of_runs;
    }
    GlyphMetrics metrics(std::uint8_t number) const {
        return FaceMetrics<Rom<CountedBytes>>{rom_, 0}.of_others(number);
    }

    const std::vector<std::uint8_t>& bytes_;
    const PixelTimes pixel_;
    int reads_ = 0;
    Rom<CountedBytes> rom_;
};

}  // namespace

bool changed_runs_pay(const StoredDigits& digits) {
    const int packing = digits.face[face::packing];
    // A whole digit of segments is drawn row by row; its changed bars are a part of that.
    if (packing == packing::segment) return true;
    if (packing != packing::plain && packing != packing::runs) return false;
    WeighedFace face(digits.face, timed_pixel);
    double changes = 0.0, wholes = 0.0;
    for (int is = digits.zero; is < digits.zero + digits.count; ++is) {
        const double whole = face.whole(static_cast<std::uint8_t>(is));
        for (int was = digits.zero; was < digits.zero + digits.count; ++was) {
            if (was == is) continue;
            const double change =
                face.change(static_cast<std::uint8_t>(was), static_cast<std::uint8_t>(is));
            // A slice is charged as for the whole cell.
            if (change > whole * 9.0 / 8.0) return false;
            changes += change;
            wholes += whole;
        }
    }
    return changes < wholes;
}

double median_change(const StoredDigits& digits, const PixelTimes& pixel, bool by_what_differs) {
    WeighedFace face(digits.face, pixel);
    std::vector<double> cycles;
    for (int is = digits.zero; is < digits.zero + digits.count; ++is) {
        for (int was = digits.zero; was < digits.zero + digits.count; ++was) {
            if (was == is) continue;
            cycles.push_back(by_what_differs ? face.change(static_cast<std::uint8_t>(was),
                                                           static_cast<std::uint8_t>(is))
                                             : face.whole(static_cast<std::uint8_t>(is)));
        }
    }
    if (cycles.empty()) return 0.0;
    const auto half = cycles.begin() + static_cast<std::ptrdiff_t>(cycles.size() / 2);
    std::nth_element(cycles.begin(), half, cycles.end());
    return *half;
}

PixelTimes pixel_times(const Layout& layout) {
    // Of the drivers in ui/mcu, as they were timed (sim/ledger/measured_times.hpp).
    const double driver_byte = layout.bus.kind == BusKind::usart_spi   ? 16.0
                               : layout.bus.kind == BusKind::spi       ? 22.0
                               : layout.bus.kind == BusKind::parallel8 ? 12.0
                                                                       : 18.0;
    const double bus_byte = layout.bus.kind == BusKind::parallel8
                                ? 1.0
                                : 8.0 * layout.clock.value / layout.bus.clock.value;
    const int bytes = layout.display.bytes_per_pixel;
    PixelTimes times;
    times.sent = std::max(driver_byte, bus_byte) * bytes;
    times.by_edges = layout.bus.kind == BusKind::spi_timed && bytes == 2;
    if (sends_contexts(layout.bus.kind, bytes))
        times.decided = std::max(
            times.sent,
            layout.bus.kind == BusKind::usart_spi ? usart_decided_pixel : timed_pixel.sent);
    return times;
}

}  // namespace dialplate
