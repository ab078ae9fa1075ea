#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

namespace dialplate {

std::string image_source(const Emitting& it) {
    constexpr std::size_t bytes_per_line = 16;
    std::string text = filled(R"(// The image of "@title@": pages, faces, pictures and texts.
// What the bytes mean: src/dialplate/image.md. Written by dialplate; a change is lost when it emits again.
#include "layout.hpp"

namespace layout {

const uint8_t image_bytes[image_size] DIALPLATE_IN_FLASH = {)",
                              {{"title", in_comment(it.layout.title)}});
    for (std::size_t i = 0; i < it.built.bytes.size(); ++i) {
        text += i % bytes_per_line == 0 ? "\n    " : " ";
        text += hexadecimal(it.built.bytes[i]);
        text += ',';
    }
    return text + "\n};\n\n}  // namespace layout\n";
}

}  // namespace dialplate
