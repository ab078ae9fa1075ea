// image-size: the image is one object, and a compiler places objects up to a certain size only.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource image_size_sources[] = {
    {"the compiler's limit for one object, layouts/parts/mcus.json (MCU-04)", Trust::memory},
};

/// The part of the image that would be worth making smaller.
std::string greatest_part(const BuiltImage& image, const Layout& layout) {
    std::string name;
    std::int64_t bytes = 0;
    for (const FaceCost& face : image.faces) {
        if (face.bytes.value <= bytes) continue;
        bytes = face.bytes.value;
        name = "face \"" + layout.faces.at(static_cast<std::size_t>(face.face)).name + "\"";
    }
    for (const PictureCost& picture : image.pictures) {
        if (picture.bytes.value <= bytes) continue;
        bytes = picture.bytes.value;
        name = "picture \"" + picture.file + "\"";
    }
    if (name.empty()) return "";
    return "; its greatest part is " + name + " with " + std::to_string(bytes) + " bytes";
}

void find_image_size(const Subject& subject, std::vector<Finding>& found) {
    if (!subject.layout.mcu.object_max) return;
    const std::int64_t most = subject.layout.mcu.object_max->value;
    const auto size = static_cast<std::int64_t>(subject.image.bytes.size());
    if (size <= most) return;
    add_finding(found,
                Severity::must,
                "/mcu",
                {static_cast<double>(size), static_cast<double>(most), "bytes"},
                "the image has " + std::to_string(size) + " bytes, one object may have " +
                    std::to_string(most) + " on " + subject.layout.mcu.name + ": " +
                    std::to_string(size - most) + " bytes have to go" +
                    greatest_part(subject.image, subject.layout));
}

}  // namespace

const Rule image_size{
    .name = "image-size",
    .sentence = "The image is no greater than one object may be.",
    .computed = "Bytes of the image, which is one object, against what the compiler can place.",
    .formula = "image <= object_max",
    .sources = image_size_sources,
    .figures = {},
    .find = find_image_size,
};

}  // namespace dialplate::rule
