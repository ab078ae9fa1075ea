#include "sim/check/large_text.hpp"

#include <cctype>
#include <string>

namespace dialplate {

namespace {

constexpr double millimetres_a_point = 25.4 / 72.0;
constexpr Millimetres large_em{18.0 * millimetres_a_point};       // CON-06
constexpr Millimetres large_bold_em{14.0 * millimetres_a_point};  // CON-06
// Capitals are about 0.7 of the em (from memory, a usual figure); segment digits have no em of their own.
constexpr double digit_to_em = 0.7;

bool is_bold(const std::string& file) {
    std::string lower;
    for (const char c : file)
        lower += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return lower.find("bold") != std::string::npos;
}

}  // namespace

bool is_large_text(const Layout& layout, FaceId id) {
    const Face& face = layout.faces.at(static_cast<std::size_t>(id));
    const double em = face.kind == FaceKind::segment ? face.segment_height / digit_to_em
                                                     : static_cast<double>(face.size);
    const Millimetres height = layout.pitch_y() * (em * face.scale);
    const bool bold = face.kind == FaceKind::raster && is_bold(face.file);
    return height >= (bold ? large_bold_em : large_em);
}

}  // namespace dialplate
