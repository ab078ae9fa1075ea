// What faces weigh, as Markdown: six-face panels all in all, medians of 22 faces, and the same bits by general compressors.
//
//     build/tests/bench/face_weights
//
// zopfli, xz and brotli (Debian packages of these names, xz-utils) have the cropped bits of a whole face in one go, without
// random access and without metrics; what is missing is left out.
#include "fonts/bits.hpp"
#include "fonts/code_plain.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "sim/image/packing_choice.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <unistd.h>
#include <vector>

namespace {

using namespace dialplate;

const std::u32string readout = U"0123456789. -";
const std::u32string used_only = U" +-./:0123456789AFBCDEGHKLMNPQRSTUVWz";

// What a decoder of cropped bits, its look-up and a loop that sends take: 136 and 122 bytes measured with avr-g++
// 5.4 -Os, the rest estimated.
constexpr std::int64_t yardstick_code = 300;
// Its face has four bytes of header, and a map of characters: two bytes for a range, else one each.
std::int64_t yardstick_bytes(const RasterFace& face, bool range) {
    return static_cast<std::int64_t>(cropped_bytes(face) + 4 + (range ? 2 : face.glyphs.size()));
}

std::u32string ascii() {
    std::u32string all;
    for (char32_t code = U' '; code <= U'~'; ++code)
        all += code;
    return all;
}

RasterFace raster(const std::string& file, int size, const std::u32string& characters) {
    FaceResult result = rasterise({.file = file, .size = size, .characters = characters});
    if (!result.face) throw std::runtime_error(file + ": " + result.error);
    return std::move(*result.face);
}

struct Family {
    const char* name;
    std::string bold, regular;
};
const std::string dejavu = "/usr/share/fonts/truetype/dejavu/";
const std::string liberation = "/usr/share/fonts/truetype/liberation/";
const std::string b612 = "/usr/share/fonts/opentype/b612/";
const Family families[] = {
    {"DejaVu", dejavu + "DejaVuSans-Bold.ttf", dejavu + "DejaVuSans.ttf"},
    {"Liberation",
     liberation + "LiberationSans-Bold.ttf",
     liberation + "LiberationSans-Regular.ttf"},
    {"B612", b612 + "B612-Bold.otf", b612 + "B612-Regular.otf"},
};

struct PanelFace {
    std::string what;
    RasterFace face;
    bool range = false;  // its characters follow each other
};

// 72, 48, 32 px digits; 12, 16 px ASCII; 20 px used-only.
std::vector<PanelFace> panel(const Family& family) {
    std::vector<PanelFace> faces;
    for (const int size : {72, 48, 32})
        faces.push_back({std::to_string(size) + " px digits", raster(family.bold, size, readout)});
    for (const int size : {12, 16})
        faces.push_back(
            {std::to_string(size) + " px ASCII", raster(family.regular, size, ascii()), true});
    faces.push_back({"20 px used only", raster(family.bold, 20, used_only)});
    return faces;
}

void print_panels() {
    std::printf(
        "### Six faces all in all, bytes\n\n"
        "72, 48, 32 px digits, 12, 16 px ASCII, 20 px used only; decoders as compiled: for the "
        "timed SPI and the USART "
        "with the sending, for other drivers without it.\n\n"
        "| faces | cropped, with code | data and metrics | table | decoder, timed SPI or USART | "
        "all in | "
        "of "
        "cropped | other drivers | all in | of cropped | chosen in |\n"
        "|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|\n");
    for (const Family& family : families) {
        const std::vector<PanelFace> faces = panel(family);
        std::vector<FaceToPack> wanted;
        std::int64_t cropped = yardstick_code, data = 0;
        for (const PanelFace& each : faces) {
            cropped += yardstick_bytes(each.face, each.range);
            wanted.push_back({.raster = &each.face, .digits_first = each.face.glyphs.size() < 20});
        }
        const auto begin = std::chrono::steady_clock::now();
        const PackingChoices choices = choose_packings(wanted, {.decides_and_sends = true});
        const std::chrono::duration<double, std::milli> took =
            std::chrono::steady_clock::now() - begin;
        for (const PackingChoice& choice : choices.faces)
            data += static_cast<std::int64_t>(choice.face.bytes.size());
        const int sending = sending_decoder_bytes[packing_bit::context];
        const int others = decoder_bytes[packing_bit::context];
        const std::int64_t all_in = choices.all_in.value;
        const std::int64_t all_in_of_others = all_in - sending + others;
        const auto share = [&](std::int64_t bytes) {
            return 100.0 * static_cast<double>(bytes) / static_cast<double>(cropped);
        };
        std::printf(
            "| %s | %lld | %lld | %d | %d | %lld | %.1f %% | %d | %lld | %.1f %% | %.0f ms |\n",
            family.name,
            static_cast<long long>(cropped),
            static_cast<long long>(data),
            int{context_model::contexts},
            sending,
            static_cast<long long>(all_in),
            share(all_in),
            others,
            static_cast<long long>(all_in_of_others),
            share(all_in_of_others),
            took.count());
    }
}

std::vector<std::string> all_faces() {
    std::vector<std::string> files;
    for (const char* name : {"DejaVuSans",
                             "DejaVuSans-Bold",
                             "DejaVuSansMono",
                             "DejaVuSansMono-Bold",
                             "DejaVuSerif",
                             "DejaVuSerif-Bold"})
        files.push_back(dejavu + name + ".ttf");
    for (const char* name : {"Sans-Regular",
                             "Sans-Bold",
                             "Sans-Italic",
                             "SansNarrow-Regular",
                             "SansNarrow-Bold",
                             "Serif-Regular",
                             "Serif-Bold",
                             "Serif-Italic",
                             "Serif-BoldItalic",
                             "Mono-Regular",
                             "Mono-Bold",
                             "Mono-Italic"})
        files.push_back(liberation + "Liberation" + name + ".ttf");
    for (const char* name : {"Regular", "Bold"})
        for (const char* cut : {"B612-", "B612Mono-"})
            files.push_back(b612 + cut + name + ".otf");
    return files;
}

// A face by itself, with a table of its own that is not counted.
double share(const RasterFace& face) {
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : face.glyphs)
        cells.push_back(&glyph.cell);
    const ContextTable table = train_contexts(cells);
    RasterFace ordered = face;
    order_for_contexts(ordered, face.glyphs.size() < 20, table);
    return static_cast<double>(pack_context(ordered, table, 1).bytes.size()) /
           static_cast<double>(cropped_bytes(face));
}

void print_medians() {
    std::printf(
        "\n### One face with metrics, of cropped bits with 7 bytes of metrics a glyph\n\n"
        "Table and decoder not counted; %zu faces.\n\n"
        "| set | least | median | greatest | aim |\n|---|--:|--:|--:|--:|\n",
        all_faces().size());
    struct Row {
        const char* what;
        int size;
        bool legend;
        const char* aim;
    };
    for (const Row& row : {Row{"48 px digits", 48, false, "25 %"},
                           Row{"64 px digits", 64, false, "20 %"},
                           Row{"72 px digits", 72, false, "17.5 %"},
                           Row{"8 px ASCII", 8, true, "50 %"},
                           Row{"12 px ASCII", 12, true, "50 %"},
                           Row{"16 px ASCII", 16, true, "50 %"}}) {
        std::vector<double> shares;
        for (const std::string& file : all_faces())
            shares.push_back(100.0 * share(raster(file, row.size, row.legend ? ascii() : readout)));
        std::sort(shares.begin(), shares.end());
        std::printf("| %s | %.1f %% | %.1f %% | %.1f %% | %s |\n",
                    row.what,
                    shares.front(),
                    (shares[(shares.size() - 1) / 2] + shares[shares.size() / 2]) / 2,
                    shares.back(),
                    row.aim);
    }
}

// How many bytes a command makes of the file; "-" if it is not there.
std::string compressed(const std::string& command, const std::string& file) {
    const std::string line = command + " '" + file + "' 2>/dev/null | wc -c";
    std::FILE* const pipe = ::popen(line.c_str(), "r");
    int bytes = 0;
    const bool read = pipe != nullptr && std::fscanf(pipe, "%d", &bytes) == 1;
    if (pipe != nullptr) ::pclose(pipe);
    return read && bytes > 0 ? std::to_string(bytes) : "-";
}

void print_references() {
    std::printf(
        "\n### The same bits by general compressors, bytes\n\n"
        "They have a whole face in one stream; `context` has its glyphs apart, with a table of "
        "the panel's.\n\n"
        "| faces | set | cropped bits | zopfli | xz | brotli | context, data | with metrics |\n"
        "|---|---|--:|--:|--:|--:|--:|--:|\n");
    const std::string file =
        (std::filesystem::temp_directory_path() / ("face_weights." + std::to_string(::getpid())))
            .string();
    for (const Family& family : families) {
        const std::vector<PanelFace> faces = panel(family);
        std::vector<const Bitmap*> all;
        for (const PanelFace& each : faces)
            for (const Glyph& glyph : each.face.glyphs)
                all.push_back(&glyph.cell);
        const ContextTable table = train_contexts(all);
        for (const PanelFace& each : faces) {
            std::vector<std::uint8_t> bits;
            for (const Glyph& glyph : each.face.glyphs) {
                fonts::BitWriter to;
                fonts::write_plain(to, fonts::cut(glyph.cell, fonts::ink_box(glyph.cell)));
                bits.insert(bits.end(), to.bytes().begin(), to.bytes().end());
            }
            std::ofstream(file, std::ios::binary)
                .write(reinterpret_cast<const char*>(bits.data()),
                       static_cast<std::streamsize>(bits.size()));
            RasterFace ordered = each.face;
            order_for_contexts(ordered, each.face.glyphs.size() < 20, table);
            const PackedFace packed = pack_context(ordered, table, 1);
            std::size_t data = 0;
            for (std::size_t at = face::metrics; at < packed.bytes.size(); ++at) {
                if (packed.bytes[at] >= face::columns) continue;
                const std::size_t bytes = packed.bytes[at] * packed.bytes[face::lengths] / 256U;
                data += bytes;
                at += bytes;
            }
            std::printf(
                "| %s | %s | %zu | %s | %s | %s | %zu | %zu |\n",
                family.name,
                each.what.c_str(),
                bits.size(),
                compressed("zopfli --deflate --i100 -c", file).c_str(),
                compressed("xz --format=raw --lzma1=preset=9e,lc=0,lp=0,pb=0 -c", file).c_str(),
                compressed("brotli -q 11 -c", file).c_str(),
                data,
                packed.bytes.size());
        }
    }
    std::remove(file.c_str());
}

}  // namespace

int main() {
    try {
        print_panels();
        print_medians();
        print_references();
    } catch (const std::exception& trouble) {
        std::fprintf(stderr, "face_weights: %s\n", trouble.what());
        return 2;
    }
    return 0;
}
