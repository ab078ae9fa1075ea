#include "fonts/face.hpp"
#include "fonts/font_file.hpp"
#include "sim/commands/commands.hpp"
#include "sim/commands/faces_sheet.hpp"
#include "sim/commands/label_face.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/commands/whole_file.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/code_size.hpp"
#include "ui/image_format.hpp"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <filesystem>
#include <iostream>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

constexpr int most_enlarged = 4;

struct Wish {
    std::vector<std::string> fonts;
    std::vector<int> sizes;
    std::string characters = "0123456789. ";
    std::string picture;
    bool json = false;
};

/// One font at one size, and what it takes.
struct Weighed {
    std::string file;
    int size = 0;      ///< As drawn.
    int enlarged = 1;  ///< From a face of size / enlarged.
    RasterFace face;
    std::vector<char32_t> missing;
    std::size_t plain = 0;
    std::size_t runs = 0;
    std::size_t context = 0;  ///< With the table that all the faces weighed together would share.
    std::size_t cropped = 0;

    /// Of the packings that it fits: those that take any bytes.
    [[nodiscard]] std::size_t smallest() const {
        std::size_t least = 0;
        for (const std::size_t bytes : {plain, runs, context}) {
            if (bytes != 0 && (least == 0 || bytes < least)) least = bytes;
        }
        return least;
    }
};

/// Code points of UTF-8 text; empty when it is not UTF-8 (RFC 3629).
std::optional<std::u32string> code_points(const std::string& text) {
    std::u32string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto lead = static_cast<unsigned char>(text[at]);
        const int more = lead < 0x80       ? 0
                         : lead >> 5 == 6  ? 1
                         : lead >> 4 == 14 ? 2
                         : lead >> 3 == 30 ? 3
                                           : -1;
        if (more < 0 || at + static_cast<std::size_t>(more) >= text.size()) {
            return std::nullopt;
        }
        char32_t code = more == 0 ? lead : lead & (0x3FU >> more);
        for (int i = 1; i <= more; ++i) {
            const auto next = static_cast<unsigned char>(text[at + static_cast<std::size_t>(i)]);
            if (next >> 6 != 2) {
                return std::nullopt;
            }
            code = code << 6 | (next & 0x3FU);
        }
        out += code;
        at += static_cast<std::size_t>(more) + 1;
    }
    return out;
}

std::string where_is(const std::string& font) {
    std::error_code trouble;
    return std::filesystem::exists(font, trouble) ? font : find_file(".", font);
}

/// How often a font with one fixed size has to be enlarged for another; 0: that size cannot be had.
int enlargement(const std::optional<int>& fixed, int size) {
    if (!fixed) {
        return 1;
    }
    const int times = size / *fixed;
    return size % *fixed == 0 && times <= most_enlarged ? times : 0;
}

/// Weighs one font at every size that can be had of it, and says what is wrong with the rest.
std::vector<Weighed> weigh(const std::string& font,
                           const std::vector<int>& sizes,
                           const std::u32string& characters,
                           ExitStatus& status) {
    const auto fail = [&status](const std::string& why) {
        complain(why);
        status.add(ExitStatus::unusable);
    };
    const std::string file = where_is(font);
    if (file.empty()) {
        fail("there is no font file \"" + font + "\" here or in fonts/");
        return {};
    }
    const std::optional<int> fixed = fonts::read_font_file(file).traits.pixel_size;
    std::vector<Weighed> all;
    for (const int size : sizes) {
        const int enlarged = enlargement(fixed, size);
        if (enlarged == 0) {
            continue;
        }
        FaceResult result = rasterise(
            {.file = file, .size = size / enlarged, .characters = characters, .even_digits = true});
        if (!result.face) {
            fail("font \"" + font + "\" at " + std::to_string(size) + " px: " + result.error);
            continue;
        }
        Weighed weighed;
        weighed.file = font;
        weighed.size = size;
        weighed.enlarged = enlarged;
        weighed.face = std::move(*result.face);
        weighed.missing = std::move(result.missing);
        weighed.plain = pack(weighed.face, Packing::plain, enlarged).bytes.size();
        weighed.runs = pack(weighed.face, Packing::runs, enlarged).bytes.size();
        weighed.cropped = cropped_bytes(weighed.face);
        all.push_back(std::move(weighed));
    }
    if (all.empty() && fixed && status.code == ExitStatus::fine) {
        fail("font \"" + font + "\" is drawn for " + std::to_string(*fixed) +
             " px; enlarged it can be had in 2, 3 and 4 times that");
    }
    return all;
}

/// Packs all of them in `context`, with one table.
void weigh_in_context(std::vector<Weighed>& all) {
    std::vector<const Bitmap*> cells;
    for (const Weighed& one : all) {
        for (const Glyph& glyph : one.face.glyphs) {
            cells.push_back(&glyph.cell);
        }
    }
    const ContextTable table = train_contexts(cells);
    for (Weighed& one : all) {
        one.context = pack_context(one.face, table, one.enlarged).bytes.size();
    }
}

/// Flash of the decoder of a packing, on the microcontroller that was compiled for.
Bytes decoder_bytes(Part packing) {
    Mcu mcu;
    mcu.name = "ATmega328P";
    mcu.family = "avr";
    PartSet without;
    without.add(Part::readout).add(Part::box);
    PartSet with = without;
    with.add(packing);
    return engine_size(with, mcu).bytes - engine_size(without, mcu).bytes;
}

std::string hexadecimal(char32_t code) {
    char text[16];
    std::snprintf(text, sizeof text, "U+%04X", static_cast<unsigned>(code));
    return text;
}

void print_json(const std::vector<Weighed>& all) {
    Json faces = Json::array();
    for (const Weighed& one : all) {
        const auto entry = [&one](const char* name, std::size_t bytes, Part part) {
            return Json{{"name", name},
                        {"bytes", bytes},
                        {"decoder_bytes", decoder_bytes(part).value},
                        {"of_cropped",
                         one.cropped == 0 ? Json{}
                                          : Json(static_cast<double>(bytes) /
                                                 static_cast<double>(one.cropped))}};
        };
        Json missing = Json::array();
        for (const char32_t code : one.missing) {
            missing.push_back(hexadecimal(code));
        }
        faces.push_back({{"file", one.file},
                         {"size", one.size},
                         {"enlarged", one.enlarged},
                         {"height", one.face.height * one.enlarged},
                         {"glyphs", one.face.glyphs.size()},
                         {"missing", std::move(missing)},
                         {"cropped", one.cropped},
                         {"packings",
                          {entry("plain", one.plain, Part::plain),
                           entry("runs", one.runs, Part::runs),
                           entry("context", one.context, Part::context)}}});
    }
    std::cout << Json{{"faces", std::move(faces)},
                      {"context_table_bytes", int{context_model::contexts}}}
                     .dump(2, ' ', false, Json::error_handler_t::replace)
              << '\n';
}

/// " x2" for a face that is drawn twice as large as it is stored.
std::string times(int enlarged) {
    return enlarged == 1 ? "" : "x" + std::to_string(enlarged);
}

void print_table(const std::vector<Weighed>& all) {
    std::size_t name_width = 4;
    for (const Weighed& one : all) {
        name_width = std::max(name_width, one.file.size());
    }
    std::printf("%-*s  size     rows  glyphs  cropped     plain            runs         context\n",
                static_cast<int>(name_width),
                "font");
    for (const Weighed& one : all) {
        const double yardstick = one.cropped == 0 ? 1.0 : static_cast<double>(one.cropped);
        std::printf(
            "%-*s  %4d %-3s %4d  %6zu  %7zu  %6zu %4.0f %%%c  %6zu %4.0f %%%c  %6zu %4.0f %%%c\n",
            static_cast<int>(name_width),
            one.file.c_str(),
            one.size,
            times(one.enlarged).c_str(),
            one.face.height * one.enlarged,
            one.face.glyphs.size(),
            one.cropped,
            one.plain,
            100.0 * static_cast<double>(one.plain) / yardstick,
            one.plain == one.smallest() ? '*' : ' ',
            one.runs,
            100.0 * static_cast<double>(one.runs) / yardstick,
            one.runs == one.smallest() ? '*' : ' ',
            one.context,
            100.0 * static_cast<double>(one.context) / yardstick,
            one.context == one.smallest() ? '*' : ' ');
    }
    std::printf(
        "\nBytes of flash with metrics. Cropped: inked boxes bit by bit with 7 bytes of metrics a "
        "glyph,\n"
        "the yardstick for the percentages. *: the smallest packing. x2: stored at half the size "
        "and\n"
        "enlarged when drawn. Decoders come once: plain %d, runs %d, context %d bytes on the "
        "ATmega328P,\n"
        "and with context a table of %d bytes that the faces above share.\n",
        static_cast<int>(decoder_bytes(Part::plain).value),
        static_cast<int>(decoder_bytes(Part::runs).value),
        static_cast<int>(decoder_bytes(Part::context).value),
        int{context_model::contexts});
}

std::string draw_picture(const std::vector<Weighed>& all, const std::string& path) {
    const FaceResult labels = load_label_face();
    if (!labels.face) {
        return labels.error;
    }
    std::vector<FaceSample> samples;
    for (const Weighed& one : all) {
        const std::string name = std::filesystem::path(one.file).filename().string();
        samples.push_back({name + "  " + std::to_string(one.size) + " px " + times(one.enlarged) +
                               " plain " + std::to_string(one.plain) + "  runs " +
                               std::to_string(one.runs) + "  context " +
                               std::to_string(one.context) + " bytes",
                           one.face,
                           one.enlarged});
    }
    return write_whole(path, png_bytes(draw_sheet(samples, *labels.face)));
}

void weigh_faces(const Wish& wish, ExitStatus& status) {
    const std::optional<std::u32string> characters = code_points(wish.characters);
    if (!characters || characters->empty()) {
        complain("--chars needs at least one character, written in UTF-8");
        status.add(ExitStatus::unusable);
        return;
    }
    std::vector<Weighed> all;
    for (const std::string& font : wish.fonts) {
        for (Weighed& one : weigh(font, wish.sizes, *characters, status)) {
            for (const char32_t code : one.missing) {
                complain("font \"" + font + "\" has no glyph for " + hexadecimal(code));
            }
            all.push_back(std::move(one));
        }
    }
    if (all.empty()) {
        return;
    }
    weigh_in_context(all);
    if (!wish.picture.empty()) {
        const std::string trouble = draw_picture(all, wish.picture);
        if (!trouble.empty()) {
            complain(trouble);
            status.add(ExitStatus::unusable);
        }
    }
    if (wish.picture == "-") {
        return;  // standard output is the picture
    }
    if (wish.json) {
        print_json(all);
    } else {
        print_table(all);
    }
}

}  // namespace

void add_faces(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<Wish>();
    CLI::App* command =
        program.add_subcommand("faces", "Weigh fonts: what each size and packing costs in flash.");
    command->add_option("FONT", wish->fonts, "TrueType, OpenType or BDF files")->required();
    command->add_option("--size", wish->sizes, "Sizes in pixels, separated by commas")
        ->delimiter(',')
        ->check(CLI::Range(1, 400))
        ->required();
    command->add_option("--chars", wish->characters, "The characters that are needed")
        ->capture_default_str();
    command->add_option("--picture", wish->picture, "Also draw them, into this PNG file");
    command->add_flag("--json", wish->json, "As JSON");
    command->callback([wish, &status] { weigh_faces(*wish, status); });
}

}  // namespace dialplate
