// One page of the image: its fills, its texts and its items.
#pragma once

#include "sim/image/build.hpp"
#include "sim/image/byte_block.hpp"
#include "sim/image/face_set.hpp"
#include "sim/image/paint_map.hpp"
#include "sim/image/tables.hpp"

#include <map>
#include <string>
#include <tuple>
#include <vector>

namespace dialplate {

/// Bytes of engine memory that hold what the glass shows of an item of that kind.
int shown_bytes(const Item& item, bool any_peak, bool any_tuning);

class PageWriter {
public:
    /// @param first_key  Number of the page's first key.
    PageWriter(
        const Layout& layout, int page, const FaceSet& faces, Tables& tables, BuiltImage& built);

    /// The page as ui/image.md says. Texts are references into the tables.
    ByteBlock write(int first_key);
    /// Names of the keys that are on the glass, in order.
    [[nodiscard]] const std::vector<std::string>& keys() const { return keys_; }
    [[nodiscard]] const std::vector<const Item*>& written() const { return written_; }

private:
    /// A line of text that never changes.
    struct StaticText {
        FaceId face;
        PaintId ink, ground;
        int x, y;  ///< On the glass.
        int text;  ///< In the tables.
    };
    /// A line placed in its box.
    struct Line {
        int x, y;  ///< From the box's corner.
        std::u32string text;
    };

    void add(const Item& item, int index);
    void add_frame(const Item& item);
    void add_legend(const Item& item, const Box& box, int index);
    void add_readout(const Item& item, const Box& box, int index);
    void add_key(const Item& item, const Box& box, int index);
    void add_lamp(const Item& item, const Box& box, int index);
    void add_meter(const Item& item, const Box& box, int index);
    void add_scale(const Item& item, const Box& box, int index);
    // Whether no label that the tape can show is wider than a major step.
    [[nodiscard]] bool labels_apart(const Scale& s, const Value& value, int columns) const;
    void add_picture(const Item& item, const Box& box);

    /// Places lines in a box; cuts off what does not fit, and notes how much room there was.
    std::vector<Line> place(const std::vector<std::u32string>& lines,
                            FaceId face,
                            const Box& box,
                            int edge,
                            Align align);
    void note(int index,
              const std::u32string& what,
              FaceId face,
              const Box& room,
              int lines,
              PaintId ink,
              PaintId ground,
              char kind);
    /// How far apart the lines of an item were set.
    void note_pitch(int index, const std::vector<Line>& placed);
    /// A text that never changes, on the glass.
    void put_text(
        const std::u32string& text, FaceId face, int x, int y, PaintId ink, PaintId ground);
    void put_label(const std::u32string& text,
                   FaceId face,
                   const Box& strip,
                   int centre,
                   int& free_from,
                   PaintId ink,
                   PaintId ground,
                   int index);
    int text(FaceId face, const std::u32string& line);
    void put_lines(ByteBlock& bytes, const std::vector<Line>& lines, FaceId face);
    void put_state(ByteBlock& bytes, ValueId value, std::int32_t at) const;
    void begin_item(ByteBlock& bytes, int kind) const;
    void end_item(const Item& item, ByteBlock& bytes);

    const Layout& layout_;
    const int page_;
    const FaceSet& faces_;
    Tables& tables_;
    BuiltImage& built_;
    PaintMap map_;
    std::vector<StaticText> texts_;
    ByteBlock items_;
    std::vector<const Item*> written_;
    std::vector<std::string> keys_;
};

}  // namespace dialplate
