#include "sim/image/page_writer.hpp"

#include "sim/image/lettering.hpp"
#include "ui/image_format.hpp"

#include <algorithm>

namespace dialplate {

namespace {

Box clipped(const Box& box, int width, int height) {
    Box b{std::max(0, box.x), std::max(0, box.y), 0, 0};
    b.width = std::max(0, std::min(width, box.right()) - b.x);
    b.height = std::max(0, std::min(height, box.bottom()) - b.y);
    return b;
}

}  // namespace

PageWriter::PageWriter(
    const Layout& layout, int page, const FaceSet& faces, Tables& tables, BuiltImage& built)
    : layout_(layout),
      page_(page),
      faces_(faces),
      tables_(tables),
      built_(built),
      map_(layout.glass_width(),
           layout.glass_height(),
           layout.pages[static_cast<std::size_t>(page)].ground) {}

ByteBlock PageWriter::write(int first_key) {
    const Page& page = layout_.pages[static_cast<std::size_t>(page_)];
    for (const Item& item : page.items) {
        if (item.kind == ItemKind::frame) add_frame(item);
    }
    for (std::size_t i = 0; i < page.items.size(); ++i)
        add(page.items[i], static_cast<int>(i));

    ByteBlock out;
    out.u16(first_key);
    const std::size_t groups_at = out.hole16();
    const std::size_t texts_at = out.hole16();
    const std::size_t items_at = out.hole16();
    out.u16(static_cast<int>(written_.size()));
    int groups = 0;
    const std::vector<PaintMap::Fill> fills = map_.rectangles();
    for (std::size_t i = 0; i < fills.size(); ++groups) {
        out.u8(fills[i].paint);
        const std::size_t count_at = out.size();
        out.u8(0);
        int count = 0;
        for (const PaintId paint = fills[i].paint;
             i < fills.size() && fills[i].paint == paint && count < 255;
             ++i, ++count) {
            out.rect(fills[i].box);
        }
        out.patch8(count_at, count);
    }
    out.patch16(groups_at, groups);
    out.refer_here(texts_at);
    std::stable_sort(texts_.begin(), texts_.end(), [](const StaticText& a, const StaticText& b) {
        return std::tie(a.face, a.ink, a.ground) < std::tie(b.face, b.ink, b.ground);
    });
    for (std::size_t i = 0; i < texts_.size();) {
        const StaticText& first = texts_[i];
        out.u8(first.face);
        out.u8(first.ink);
        out.u8(first.ground);
        const std::size_t count_at = out.size();
        out.u8(0);
        int count = 0;
        for (; i < texts_.size() && count < 255 && texts_[i].face == first.face &&
               texts_[i].ink == first.ink && texts_[i].ground == first.ground;
             ++i, ++count) {
            out.point(texts_[i].x, texts_[i].y);
            out.text(texts_[i].text);
        }
        out.patch8(count_at, count);
    }
    out.refer_here(items_at);
    out.append(items_);
    return out;
}

void PageWriter::add(const Item& item, int index) {
    const Box box = clipped(item.box, layout_.glass_width(), layout_.glass_height());
    if (box.width == 0 || box.height == 0) return;
    switch (item.kind) {
        case ItemKind::readout:
            add_readout(item, box, index);
            break;
        case ItemKind::key:
            add_key(item, box, index);
            break;
        case ItemKind::legend:
            add_legend(item, box, index);
            break;
        case ItemKind::lamp:
            add_lamp(item, box, index);
            break;
        case ItemKind::meter:
            add_meter(item, box, index);
            break;
        case ItemKind::scale:
            add_scale(item, box, index);
            break;
        case ItemKind::picture:
            add_picture(item, box);
            break;
        case ItemKind::frame:
            break;
    }
}

void PageWriter::add_frame(const Item& item) {
    const Box& b = item.box;
    const int line = std::min({item.frame.line, b.width, b.height});
    if (item.frame.fill) map_.fill(b, *item.frame.fill);
    map_.fill({b.x, b.y, b.width, line}, item.frame.ink);
    map_.fill({b.x, b.bottom() - line, b.width, line}, item.frame.ink);
    map_.fill({b.x, b.y, line, b.height}, item.frame.ink);
    map_.fill({b.right() - line, b.y, line, b.height}, item.frame.ink);
}

int PageWriter::text(FaceId face, const std::u32string& line) {
    std::vector<std::uint8_t> glyphs;
    for (const char32_t code : line)
        glyphs.push_back(static_cast<std::uint8_t>(faces_.index(face, code)));
    return tables_.text(glyphs);
}

void PageWriter::put_text(
    const std::u32string& line, FaceId face, int x, int y, PaintId ink, PaintId ground) {
    if (line.empty()) return;
    map_.take({x, y, faces_.width(face, line), faces_.height(face)});
    texts_.push_back({face, ink, ground, x, y, text(face, line)});
}

void PageWriter::note(int index,
                      const std::u32string& what,
                      FaceId face,
                      const Box& room,
                      int lines,
                      PaintId ink,
                      PaintId ground,
                      char kind) {
    std::string words;
    for (const char32_t code : what)
        words += utf8(code);
    const int least_pitch = faces_.line_pitch(face, lines, 0);
    built_.texts_shown.push_back({page_,
                                  index,
                                  words,
                                  face,
                                  faces_.width(face, what),
                                  faces_.height(face) + (lines - 1) * least_pitch,
                                  room.width,
                                  room.height,
                                  ink,
                                  ground,
                                  kind});
}

void PageWriter::note_pitch(int index, const std::vector<Line>& placed) {
    if (placed.size() < 2) return;
    for (TextExtent& text : built_.texts_shown)
        if (text.page == page_ && text.item == index) text.pitch = placed[1].y - placed[0].y;
}

std::vector<PageWriter::Line> PageWriter::place(
    const std::vector<std::u32string>& lines, FaceId face, const Box& box, int edge, Align align) {
    std::vector<Line> placed;
    if (!faces_.usable(face)) return placed;
    const int height = faces_.height(face), capital = faces_.capital(face);
    const int count = static_cast<int>(lines.size());
    const int pitch = faces_.line_pitch(face, count, box.height - 2 * edge);
    // Centred by the ink of capitals, not by cells with their descenders; then kept inside.
    int y = (box.height - ((count - 1) * pitch + capital)) / 2 + capital - faces_.ascent(face);
    y = std::min(y, box.height - edge - ((count - 1) * pitch + height));
    y = std::max(y, edge);
    for (std::u32string line : lines) {
        if (y + height > box.height - edge) break;
        while (!line.empty() && faces_.width(face, line) > box.width - 2 * edge)
            line.pop_back();
        const int width = faces_.width(face, line);
        const int x =
            align == Align::left ? edge
            : align == Align::centre
                ? std::min((box.width - width + faces_.spacing(face)) / 2, box.width - edge - width)
                : box.width - edge - width;
        if (!line.empty()) placed.push_back({x, y, line});
        y += pitch;
    }
    return placed;
}

void PageWriter::add_legend(const Item& item, const Box& box, int index) {
    const Legend& l = item.legend;
    map_.fill(box, l.ground);
    const std::vector<std::u32string> lines = lines_of(l.text);
    if (!faces_.usable(l.face)) return;
    for (const std::u32string& line : lines) {
        note(index, line, l.face, box, static_cast<int>(lines.size()), l.ink, l.ground, 't');
    }
    const std::vector<Line> placed = place(lines, l.face, box, 0, l.align);
    note_pitch(index, placed);
    for (const Line& line : placed) {
        put_text(line.text, l.face, box.x + line.x, box.y + line.y, l.ink, l.ground);
    }
}

void PageWriter::put_lines(ByteBlock& bytes, const std::vector<Line>& lines, FaceId face) {
    bytes.u8(static_cast<int>(lines.size()));
    for (const Line& line : lines) {
        bytes.point(line.x, line.y);
        bytes.text(text(face, line.text));
    }
}

void PageWriter::put_state(ByteBlock& bytes, ValueId value, std::int32_t at) const {
    const ValueType type = layout_.values[static_cast<std::size_t>(value)].type;
    bytes.u8(value);
    if (type == ValueType::choice || type == ValueType::flag) {
        bytes.u8(at);
    } else {
        bytes.i32(at);
    }
}

void PageWriter::begin_item(ByteBlock& bytes, int kind) const {
    bytes.u8(0);
    bytes.u8(kind);
}

void PageWriter::end_item(const Item& item, ByteBlock& bytes) {
    if (bytes.size() > 255) {
        Finding f;
        f.rule = "item-size";
        f.pointer = item.pointer;
        f.message = item.name + " takes " + std::to_string(bytes.size()) +
                    " bytes in the image, an item has at most 255: use fewer choices or lines";
        tables_.findings.push_back(f);
        return;
    }
    bytes.patch8(item::size, static_cast<int>(bytes.size()));
    items_.append(bytes);
    written_.push_back(&item);
}

void PageWriter::add_key(const Item& item, const Box& box, int index) {
    const Key& k = item.key;
    const Look& look = layout_.looks[static_cast<std::size_t>(k.look)];
    const std::vector<std::u32string> lines = lines_of(k.text);
    const bool lettered = !lines.empty() && faces_.usable(k.face);
    const int edge = std::min({k.edge, box.width / 2, box.height / 2});
    const Box room{0, 0, box.width - 2 * (edge + 1), box.height - 2 * (edge + 1)};
    for (const std::u32string& line : lines) {
        if (lettered)
            note(index,
                 line,
                 k.face,
                 room,
                 static_cast<int>(lines.size()),
                 look.idle.ink,
                 look.idle.fill,
                 't');
    }
    int flags = box::key;
    if (k.active_value) flags |= box::active;
    if (k.hold.kind != ActionKind::none) flags |= box::holds;
    if (k.enabled_by) flags |= box::enabled_by;
    if (k.tap.kind == ActionKind::page) flags |= box::tap_page;
    if (k.hold.kind == ActionKind::page) flags |= box::hold_page;
    if (k.repeat) flags |= box::repeats;
    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::box));
    bytes.rect(box);
    bytes.u8(tables_.tones({look.idle, look.active, look.pressed, look.disabled}));
    bytes.u8(std::max(0, map_.at(item.box.x, item.box.y)));
    bytes.u8(std::min({k.radius, box.width / 2, box.height / 2, 127}));
    bytes.u8(edge);
    bytes.u8(lettered ? k.face : 0);
    bytes.u8(flags);
    if (k.active_value) put_state(bytes, *k.active_value, k.active_at);
    if (k.enabled_by) bytes.u8(*k.enabled_by);
    if (flags & box::tap_page) bytes.u8(k.tap.page);
    if (flags & box::hold_page) bytes.u8(k.hold.page);
    const std::vector<Line> placed =
        lettered ? place(lines, k.face, box, edge, Align::centre) : std::vector<Line>{};
    note_pitch(index, placed);
    put_lines(bytes, placed, k.face);
    end_item(item, bytes);
    keys_.push_back(item.name);
    map_.take(box);
}

void PageWriter::add_lamp(const Item& item, const Box& box, int index) {
    const Lamp& l = item.lamp;
    const Value& value = layout_.values[static_cast<std::size_t>(l.value)];
    const int edge = std::min({l.edge, box.width / 2, box.height / 2});
    const Box room{0, 0, box.width - 2 * edge, box.height - 2 * edge};
    std::vector<Line> lines;
    if (faces_.usable(l.face)) {
        if (l.when) {
            const std::vector<std::u32string> words = lines_of(l.text);
            for (const std::u32string& line : words) {
                note(index,
                     line,
                     l.face,
                     room,
                     static_cast<int>(words.size()),
                     l.lit.ink,
                     l.lit.fill,
                     't');
            }
            lines = place(words, l.face, box, edge, Align::centre);
            note_pitch(index, lines);
        } else {
            for (const Choice& choice : value.choices) {
                const std::u32string words = code_points(choice.text);
                note(index, words, l.face, room, 1, l.lit.ink, l.lit.fill, 't');
                std::vector<Line> placed = place({words}, l.face, box, edge, Align::centre);
                // Every choice has its line, even one that found no room.
                lines.push_back(placed.empty() ? Line{edge, edge, U""} : placed.front());
            }
        }
    }
    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::box));
    bytes.rect(box);
    bytes.u8(l.when ? tables_.tones({l.unlit, l.lit}) : tables_.tones({l.lit}));
    bytes.u8(std::max(0, map_.at(item.box.x, item.box.y)));
    bytes.u8(std::min({l.radius, box.width / 2, box.height / 2, 127}));
    bytes.u8(edge);
    bytes.u8(lines.empty() ? 0 : l.face);
    bytes.u8(l.when ? box::active : box::words);
    if (l.when) {
        put_state(bytes, l.value, *l.when);
    } else {
        bytes.u8(l.value);
    }
    put_lines(bytes, lines, l.face);
    end_item(item, bytes);
    map_.take(box);
}

void PageWriter::add_picture(const Item& item, const Box& box) {
    if (box != item.box) {
        map_.fill(box,
                  item.picture.ground);  // cut by the edge of the glass: strips cannot be clipped
        return;
    }
    const std::optional<int> number = tables_.picture(item.picture);
    if (!number) return;
    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::picture));
    bytes.rect(box);
    bytes.u8(*number);
    bytes.u8(item.picture.ink);
    bytes.u8(item.picture.ground);
    if (!item.picture.tones.empty()) {
        bytes.u8(item.picture.tones[1]);
        bytes.u8(item.picture.tones[2]);
    }
    end_item(item, bytes);
    map_.take(box);
}

}  // namespace dialplate
