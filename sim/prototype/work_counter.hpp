// Counts what the engine does, from what it reads of the image and what it tells the bus.
#pragma once

#include "sim/prototype/engine_work.hpp"
#include "sim/prototype/image_map.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace dialplate {

class WorkCounter {
public:
    /// @param values  What the engine was told of each value. It and `image` must outlive the counter.
    WorkCounter(const std::vector<std::uint8_t>& image, const std::vector<std::int32_t>& values);

    void read(std::uint16_t at) {
        if (at >= map_.kinds.size()) return;
        const std::uint16_t kind = map_.kinds[at];
        ++work_.times[kind];
        if (tells_[kind]) listen(kind, at);
    }
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t width, std::uint16_t height);
    void push(std::uint16_t colour, std::uint16_t count);
    /// A call of the service function begins.
    void service() { ++work_.times[work::service]; }
    /// It ends. full: it was cut.
    void end_service(bool full);

    /// So far.
    [[nodiscard]] const EngineWork& work() const { return work_; }

private:
    struct Window {
        int x = 0, y = 0, width = 0, height = 0;
    };
    static constexpr int decoding_kinds = work::segment_end - work::runs_row;
    using Decoding = std::array<std::int32_t, decoding_kinds>;

    void listen(int kind, int at);
    void listen_for_change(int kind, int at);
    void add_compared_digit();
    void add_unlike_rows();
    void begin(work::Subject subject);
    void begin_glyph(int face_kind, int face_at);
    void add_corners();
    void add_segment_rows(int face_at);
    void listen_to_readout(int field, int at);
    void look_at_scale(int item);
    void add_scale_steps(int to);
    void add_digits(int item);
    void add_place_on_meter(int item);
    void add_bitmap(int at);
    [[nodiscard]] int u8(int at) const { return image_[static_cast<std::size_t>(at)]; }
    [[nodiscard]] std::int32_t i32(int at) const;
    void add(int kind, int times) { work_.times[static_cast<std::size_t>(kind)] += times; }

    const std::vector<std::uint8_t>& image_;
    const std::vector<std::int32_t>& values_;
    const ImageMap map_;
    std::array<bool, work::reads> tells_{};  ///< Reads that say more than that they happened.
    std::vector<Decoding> decodings_;        ///< Of the bitmaps, as far as `decoded_`.
    std::vector<bool> decoded_;
    EngineWork work_;
    Window window_;
    bool fresh_ = false;     ///< A window whose subject is not known yet.
    bool looks_up_ = false;  ///< A glyph in context is looked up: no stream is read.
    work::Subject item_ = work::Subject::page, subject_ = work::Subject::page;
    bool draws_readout_ = false;
    int readout_ = 0;         ///< Place of the readout that is looked at.
    int last_face_read_ = 0;  ///< Place of the byte of a face that was read last.
    int last_glyph_ =
        0;  ///< Place of the glyph whose advance, in context whose bytes, were read last.
    int changing_face_ =
        0;           ///< Face of a digit that becomes another by what differs; 0: none does.
    int box_ = 0;    ///< Place of the box that is drawn.
    int scale_ = 0;  ///< Place of the scale whose columns are walked; 0: none.
    int scale_from_ = 0, scale_to_ = 0, scale_windows_ = 0;
};

}  // namespace dialplate
