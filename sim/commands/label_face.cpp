#include "sim/commands/label_face.hpp"

#include "sim/layout/reader.hpp"

#include <string>

namespace dialplate {
namespace {

constexpr const char* label_face = "legend9.bdf";
constexpr int label_size = 9;

}  // namespace

FaceResult load_label_face() {
    std::u32string ascii;
    for (char32_t code = U' '; code <= U'~'; ++code) {
        ascii += code;
    }
    FaceResult labels =
        rasterise({.file = find_file(".", label_face), .size = label_size, .characters = ascii});
    if (!labels.face) {
        labels.error = "the face for the labels, " + std::string{label_face} + ": " + labels.error;
    }
    return labels;
}

}  // namespace dialplate
