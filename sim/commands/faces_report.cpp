#include "sim/commands/faces_report.hpp"

#include "sim/check/wording.hpp"
#include "sim/commands/columns.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "ui/image_format.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdio>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* packing_names[] = {"plain", "runs", "context"};
constexpr unsigned packing_bits[] = {packing_bit::plain, packing_bit::runs, packing_bit::context};

double share(const WeighedFace& face, const PackedWeight& packed) {
    return static_cast<double>(packed.bytes) /
           static_cast<double>(std::max<std::size_t>(1, face.cropped));
}

/// "  637*  41 %   2.8"
std::string packed_cells(const WeighedFace& face, const PackedWeight& packed) {
    if (packed.bytes == 0) return right("-", 7) + right("", 13);
    return right(std::to_string(packed.bytes), 7) + (packed.bytes == face.smallest() ? '*' : ' ') +
           right(number(100.0 * share(face, packed), 0) + " %", 6) +
           right(packed.digit ? number(packed.digit->value, 1) : "-", 6);
}

/// In tones: what it takes beside the decoder of one bit in context.
int decoder_bytes_of(const WeighedFace& face, std::size_t packing) {
    constexpr int of_tones[] = {plain_tones_decoder_bytes, 0, context_tones_decoder_bytes};
    return face.face.smooth ? of_tones[packing] : decoder_bytes[packing_bits[packing]];
}

}  // namespace

std::string enlargement_words(const WeighedFace& face) {
    return face.enlarged == 1 ? "" : " x" + std::to_string(face.enlarged);
}

std::string hexadecimal(char32_t code) {
    char text[16];
    std::snprintf(text, sizeof text, "U+%04X", static_cast<unsigned>(code));
    return text;
}

std::string faces_text(const Weighing& weighing, const WeighWish& wish) {
    std::size_t name_width = 4;
    for (const WeighedFace& face : weighing.faces)
        name_width = std::max(name_width, face.file.size());
    const bool sets = wish.sets.size() > 1;
    const std::string before(name_width + (sets ? 5 : 0), ' ');
    std::string text = before + "                                              plain" +
                       "               runs            context\n" + left("font", name_width) +
                       (sets ? "  set" : "") + "    size     rows    angle  glyphs  cropped" +
                       "  bytes          ms  bytes          ms  bytes          ms\n";
    for (const WeighedFace& face : weighing.faces) {
        text += left(face.file, name_width) + (sets ? right(std::to_string(face.set + 1), 5) : "") +
                right(std::to_string(face.size), 5) + " px" +
                left(face.face.smooth ? " ~" : enlargement_words(face), 3) +
                right(std::to_string(face.face.height * face.enlarged), 6) +
                right(face.angle ? number(face.angle->value, 1) + "'" : "-", 9) +
                right(std::to_string(face.face.glyphs.size()), 8) +
                right(std::to_string(face.cropped), 9);
        for (const PackedWeight& packed : face.packings)
            text += packed_cells(face, packed);
        text += '\n';
    }
    char below[900];
    std::snprintf(
        below,
        sizeof below,
        "\nBytes of flash with metrics, and their share of `cropped`: inked boxes bit by bit with "
        "7 "
        "bytes of\n"
        "metrics a glyph. *: the smallest. x2: stored at half the size, enlarged when drawn. "
        "Context "
        "with a table\n"
        "of its own; the table, %d bytes, comes once for all faces, as do the decoders: plain %d, "
        "runs "
        "%d,\n"
        "context %d bytes, or %d where the driver decides while it sends. Angle: a capital or "
        "digit "
        "at\n"
        "%g mm on the %s. ms: one digit of a read-out changes, ATmega328P at 16 MHz, SPI at 8 MHz, "
        "timed.\n",
        int{context_model::contexts},
        decoder_bytes[packing_bit::plain],
        decoder_bytes[packing_bit::runs],
        decoder_bytes[packing_bit::context],
        sending_decoder_bytes[packing_bit::context],
        wish.distance.value,
        wish.display.name.c_str());
    text += below;
    if (wish.smooth) {
        std::snprintf(
            below,
            sizeof below,
            "~: smoothed, four tones; the table then has %d bytes, and beside faces of one "
            "bit in context the\n"
            "decoder takes %d bytes more in plain, %d in context. There is no packing runs "
            "in tones.\n",
            int{context_model::all},
            plain_tones_decoder_bytes,
            context_tones_decoder_bytes);
        text += below;
    }
    return text;
}

std::string faces_json(const Weighing& weighing, const WeighWish& wish) {
    Json faces = Json::array();
    for (const WeighedFace& face : weighing.faces) {
        Json packings = Json::array();
        for (std::size_t i = 0; i < face.packings.size(); ++i) {
            const PackedWeight& packed = face.packings[i];
            packings.push_back(
                {{"name", packing_names[i]},
                 {"bytes", packed.bytes},
                 {"decoder_bytes", decoder_bytes_of(face, i)},
                 {"of_cropped", face.cropped == 0 ? Json{} : Json(share(face, packed))},
                 {"digit_ms", packed.digit ? Json(packed.digit->value) : Json{}}});
        }
        Json missing = Json::array();
        for (const char32_t code : face.missing)
            missing.push_back(hexadecimal(code));
        faces.push_back({{"file", face.file},
                         {"size", face.size},
                         {"set", face.set + 1},
                         {"enlarged", face.enlarged},
                         {"smooth", face.face.smooth},
                         {"height", face.face.height * face.enlarged},
                         {"arcmin", face.angle ? Json(face.angle->value) : Json{}},
                         {"glyphs", face.face.glyphs.size()},
                         {"missing", std::move(missing)},
                         {"cropped", face.cropped},
                         {"packings", std::move(packings)}});
    }
    return Json{{"display", wish.display.name},
                {"distance_mm", wish.distance.value},
                {"faces", std::move(faces)},
                {"context_table_bytes", int{context_model::contexts}}}
               .dump(2, ' ', false, Json::error_handler_t::replace) +
           '\n';
}

}  // namespace dialplate
