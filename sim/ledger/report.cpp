#include "sim/ledger/report.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <sstream>
#include <string_view>
#include <utility>

namespace dialplate {
namespace {

// Select Graphic Rendition, ECMA-48 8.3.117.
constexpr std::string_view plain = "\x1b[0m";
constexpr std::string_view bold = "\x1b[1m";
constexpr std::string_view faint = "\x1b[2m";
constexpr std::string_view alarm = "\x1b[1;31m";
constexpr std::string_view calm = "\x1b[32m";

constexpr int name_width = 34;
constexpr int bar_width = 64;
constexpr int time_name_width = 30;
constexpr std::size_t text_width = 79;

/// One line of the account: a share of the memory, with its letter in the bar.
struct Share {
    char letter;
    std::string name;
    Bytes bytes;
    std::string remark;
};

class Account {
public:
    explicit Account(bool colour) : colour_(colour) {}

    void text(std::string_view words) { out_ += words; }
    void tinted(std::string_view tone, std::string_view words) {
        if (colour_) {
            out_ += tone;
        }
        out_ += words;
        if (colour_) {
            out_ += plain;
        }
    }
    void heading(std::string_view words) {
        out_ += '\n';
        tinted(bold, words);
        out_ += '\n';
    }
    template <class... Values>
    void line(const char* format, Values... values) {
        const int length = std::snprintf(nullptr, 0, format, values...);
        const std::size_t at = out_.size();
        out_.resize(at + static_cast<std::size_t>(length) + 1);
        std::snprintf(out_.data() + at, out_.size() - at, format, values...);
        out_.pop_back();  // the zero byte
    }
    std::string take() { return std::move(out_); }

private:
    bool colour_;
    std::string out_;
};

/// Cut or filled up to `width` columns; counts code points, not bytes.
std::string column(std::string_view words, int width) {
    std::string out;
    int columns = 0;
    for (const char c : words) {
        const bool begins = (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
        if (begins && columns == width) {
            break;
        }
        columns += begins ? 1 : 0;
        out += c;
    }
    out.append(static_cast<std::size_t>(std::max(0, width - columns)), ' ');
    return out;
}

std::string number(std::int64_t n) {
    std::string digits = std::to_string(std::abs(n));
    for (std::size_t at = digits.size(); at > 3; at -= 3) {
        digits.insert(at - 3, ",");
    }
    return n < 0 ? "-" + digits : digits;
}

double percent(Bytes part, Bytes whole) {
    return whole.value == 0 ? 0.0 : 100.0 * (part / whole);
}

/// One letter for each equal part of the capacity; what is over the capacity is not drawn.
std::string stacked_bar(const std::vector<Share>& shares, Bytes capacity) {
    std::string bar;
    Bytes sum;
    for (const Share& share : shares) {
        sum += share.bytes;
        const double ends = capacity.value == 0 ? 0.0 : bar_width * (sum / capacity);
        const auto columns =
            static_cast<std::size_t>(std::clamp(std::lround(ends), 0L, long{bar_width}));
        if (columns > bar.size()) {
            bar.append(columns - bar.size(), share.letter);
        }
    }
    bar.append(static_cast<std::size_t>(bar_width) - bar.size(), '.');
    return bar;
}

void write_share(Account& out, const Share& share, Bytes capacity) {
    out.line("  %c  %s %8s  %5.1f %%",
             share.letter,
             column(share.name, name_width).c_str(),
             number(share.bytes.value).c_str(),
             percent(share.bytes, capacity));
    if (!share.remark.empty()) {
        out.text("  ");
        out.tinted(faint, share.remark);
    }
    out.text("\n");
}

void write_detail(Account& out, const std::string& name, Bytes bytes, const std::string& remark) {
    out.line("       %s %8s", column(name, name_width - 2).c_str(), number(bytes.value).c_str());
    if (!remark.empty()) {
        out.text("           ");
        out.tinted(faint, remark);
    }
    out.text("\n");
}

void write_left(Account& out, std::string_view memory, Bytes left, Bytes capacity) {
    if (left.value < 0) {
        out.text("     ");
        out.tinted(alarm,
                   std::string{"does not fit: "} + number(-left.value) + " bytes of " +
                       std::string{memory} + " too many");
        out.text("\n");
        return;
    }
    out.text("  .  ");
    out.tinted(calm, column("left", name_width));
    out.line(" %8s  %5.1f %%\n", number(left.value).c_str(), percent(left, capacity));
}

std::string counted(int n, const char* one, const char* many) {
    return std::to_string(n) + " " + (n == 1 ? one : many);
}

// The packing, and what the others would take; no bytes: it does not fit them.
template <class Cost>
std::string packing_remark(const Cost& cost, bool tones) {
    std::string others;
    for (const auto& [name, bytes] : {std::pair{"plain", cost.plain},
                                      std::pair{"runs", cost.runs},
                                      std::pair{"context", cost.context}}) {
        if (cost.packing != name && bytes.value > 0) {
            others += (others.empty() ? "" : ", ") + (name + (" " + number(bytes.value)));
        }
    }
    const std::string remark = (tones ? "four tones, " : "") + cost.packing;
    return others.empty() ? remark : remark + " (" + others + ")";
}

std::string face_remark(const Layout& layout, const FaceCost& face) {
    return counted(face.glyphs, "glyph", "glyphs") + " of " + counted(face.height, "row", "rows") +
           ", " + packing_remark(face, layout.faces.at(static_cast<std::size_t>(face.face)).smooth);
}

std::string face_name(const Layout& layout, const FaceCost& face) {
    return layout.faces.at(static_cast<std::size_t>(face.face)).name;
}

void write_flash(Account& out, const Layout& layout, const FlashAccount& flash) {
    Bytes faces;
    for (const FaceCost& face : flash.faces) {
        faces += face.bytes;
    }
    Bytes pictures;
    for (const PictureCost& picture : flash.pictures) {
        pictures += picture.bytes;
    }
    std::vector<Share> shares;
    if (flash.boot.value > 0) {
        shares.push_back({'b', "boot loader", flash.boot, ""});
    }
    shares.push_back({'s', "the rest of the sketch", flash.taken, "as the layout says"});
    shares.push_back({'e', "drawing engine", flash.engine.bytes, name_of(flash.engine.standing)});
    shares.push_back({'d', "display driver", flash.driver.bytes, name_of(flash.driver.standing)});
    if (flash.touch.bytes.value > 0) {
        shares.push_back(
            {'r', "reading the touch sheet", flash.touch.bytes, name_of(flash.touch.standing)});
    }
    const std::size_t at_faces = shares.size();
    shares.push_back({'F', "faces", faces, ""});
    if (flash.contexts.value > 0) {
        shares.push_back({'c', "contexts", flash.contexts, "table of the packing"});
    }
    const std::size_t at_pictures = shares.size();
    if (!flash.pictures.empty()) {
        shares.push_back({'P', "pictures", pictures, ""});
    }
    shares.push_back({'p', "pages", flash.pages, ""});
    shares.push_back({'t', "texts", flash.texts, ""});
    shares.push_back({'h', "header, paints, values", flash.rest, ""});

    out.heading("Flash, bytes of " + number(flash.capacity.value));
    out.text("  [" + stacked_bar(shares, flash.capacity) + "]\n");
    for (std::size_t i = 0; i < shares.size(); ++i) {
        write_share(out, shares[i], flash.capacity);
        if (i == at_faces) {
            for (const FaceCost& face : flash.faces) {
                write_detail(out, face_name(layout, face), face.bytes, face_remark(layout, face));
            }
        }
        if (i == at_pictures && !flash.pictures.empty()) {
            for (const PictureCost& picture : flash.pictures) {
                write_detail(out,
                             picture.file,
                             picture.bytes,
                             std::to_string(picture.width) + " x " +
                                 std::to_string(picture.height) + " px, " +
                                 packing_remark(picture, picture.tones));
            }
        }
    }
    write_left(out, "flash", flash.left, flash.capacity);
    out.line("     %s %8s\n",
             column("the whole display (e to h)", name_width).c_str(),
             number(flash.total.value).c_str());
    out.line("     %s %8s\n",
             column("of it the image (F to h)", name_width).c_str(),
             number(flash.image.value).c_str());
}

void write_ram(Account& out, const RamAccount& ram) {
    std::vector<Share> shares = {
        {'s', "the rest of the sketch", ram.taken, "as the layout says"},
        {'e', "engine: values and what is shown", ram.engine, ""},
        {'k', "stack while drawing", ram.stack.bytes, name_of(ram.stack.standing)},
    };
    if (ram.margin.value > 0) {
        shares.push_back({'m', "kept free for a deeper stack", ram.margin, "margin"});
    }
    out.heading("RAM, bytes of " + number(ram.capacity.value));
    out.text("  [" + stacked_bar(shares, ram.capacity) + "]\n");
    for (const Share& share : shares) {
        write_share(out, share, ram.capacity);
    }
    write_left(out, "RAM", ram.left, ram.capacity);
    out.line("     %s %8s\n",
             column("the whole display (e and k)", name_width).c_str(),
             number(ram.total.value).c_str());
}

void write_time(Account& out, const Ledger& ledger) {
    if (ledger.time.empty()) {
        return;
    }
    out.heading("Time");
    out.tinted(faint,
               "     when                                bytes      cycles        ms   bus alone   "
               "longest "
               "piece\n");
    for (const EventTime& event : ledger.time) {
        out.line("     %s %10s %11s %9.2f %9.0f %% %10.2f ms\n",
                 column(event.event, time_name_width).c_str(),
                 number(event.bus_bytes.value).c_str(),
                 number(event.cycles.value).c_str(),
                 event.time.value,
                 100.0 * event.share_of_limit,
                 event.longest_slice.value);
    }
}

std::vector<std::string> wrapped(const std::string& text, std::size_t width) {
    std::vector<std::string> lines = {""};
    std::istringstream words(text);
    for (std::string word; words >> word;) {
        if (!lines.back().empty() && lines.back().size() + 1 + word.size() > width) {
            lines.emplace_back();
        }
        lines.back() += (lines.back().empty() ? "" : " ") + word;
    }
    return lines;
}

/// The bases of everything that is not exact, each once.
void write_bases(Account& out, const Ledger& ledger) {
    std::vector<std::pair<std::string, std::string>> bases;
    const auto add = [&bases](
                         const std::string& what, Standing standing, const std::string& basis) {
        if (standing == Standing::exact || basis.empty()) {
            return;
        }
        const auto same = std::find_if(
            bases.begin(), bases.end(), [&](const auto& known) { return known.second == basis; });
        if (same == bases.end()) {
            bases.emplace_back(what, basis);
        }
    };
    add("engine", ledger.flash.engine.standing, ledger.flash.engine.basis);
    add("driver", ledger.flash.driver.standing, ledger.flash.driver.basis);
    add("touch", ledger.flash.touch.standing, ledger.flash.touch.basis);
    add("stack", ledger.ram.stack.standing, ledger.ram.stack.basis);
    for (const EventTime& event : ledger.time) {
        add("time", event.standing, event.basis);
    }
    if (bases.empty()) {
        return;
    }
    out.heading("What the figures stand on");
    for (const auto& [what, basis] : bases) {
        std::string_view label = what;
        for (const std::string& line : wrapped(basis, text_width - 13)) {
            out.text("     " + column(label, 8));
            out.tinted(faint, line);
            out.text("\n");
            label = "";
        }
    }
}

}  // namespace

std::string report_text(const Layout& layout, const Ledger& ledger, bool colour) {
    Account out(colour);
    out.tinted(bold, layout.title.empty() ? layout.file : layout.title);
    out.line(": %s at %g MHz, %s\n",
             ledger.mcu.c_str(),
             ledger.clock.value / 1e6,
             layout.display.name.c_str());
    write_flash(out, layout, ledger.flash);
    write_ram(out, ledger.ram);
    write_time(out, ledger);
    write_bases(out, ledger);
    return out.take();
}

}  // namespace dialplate
