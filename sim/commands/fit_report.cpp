#include "sim/commands/fit_report.hpp"

#include "sim/check/wording.hpp"
#include "sim/commands/columns.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

/// 15198 as "15,198".
std::string grouped(std::int64_t number) {
    std::string digits = std::to_string(std::abs(number));
    for (std::size_t at = digits.size(); at > 3;) {
        at -= 3;
        digits.insert(at, ",");
    }
    return (number < 0 ? "-" : "") + digits;
}

bool may_change(const Layout& layout, std::size_t face, const FitWish& wish) {
    return layout.faces[face].latitude.has_value() &&
           std::find(wish.keep.begin(), wish.keep.end(), static_cast<FaceId>(face)) ==
               wish.keep.end();
}

/// Smallest angle of the faces that may change.
std::string smallest_angle(const Layout& layout, const Fitting& fitting, const FitWish& wish) {
    std::optional<ArcMinutes> least;
    for (std::size_t i = 0; i < fitting.faces.size(); ++i) {
        const auto& angle = fitting.faces[i].angle;
        if (may_change(layout, i, wish) && angle && (!least || *angle < *least)) least = angle;
    }
    return least ? number(least->value, 1) + "'" : "-";
}

std::string font_of(const FaceChoice& choice) {
    return std::filesystem::path(choice.file).filename().string();
}

/// "44" or, where the font may change too, "B612-Bold.otf 44".
std::string choice_words(const Layout& layout, std::size_t face, const FaceChoice& choice) {
    const bool fonts = !layout.faces[face].latitude->files.empty();
    return (fonts ? font_of(choice) + " " : "") + std::to_string(choice.size) + " px" +
           (choice.smooth ? " smoothed" : "");
}

void add_front(std::string& text, const Layout& layout, const Fit& fitted, const FitWish& wish) {
    std::vector<std::size_t> faces;
    for (std::size_t i = 0; i < layout.faces.size(); ++i)
        if (may_change(layout, i, wish)) faces.push_back(i);
    if (faces.empty() || fitted.front.empty()) return;
    std::vector<std::vector<std::string>> rows = {{"bytes", "smallest", "of needed"}};
    for (const std::size_t face : faces)
        rows.front().push_back(layout.faces[face].name);
    for (const Fitting& fitting : fitted.front) {
        std::vector<std::string> row = {
            grouped(fitting.flash.value),
            smallest_angle(layout, fitting, wish),
            std::isfinite(fitting.margin) ? number(fitting.margin, 2) : "-"};
        for (const std::size_t face : faces)
            row.push_back(choice_words(layout, face, fitting.faces[face].choice));
        rows.push_back(std::move(row));
    }
    std::vector<std::size_t> widths(rows.front().size(), 0);
    for (const auto& row : rows)
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], row[i].size());
    text +=
        "\nThe least that each smallest angle takes; from a line to the one above, what is given "
        "up:\n";
    for (std::size_t r = 0; r < rows.size(); ++r) {
        std::string line = "  ";
        for (std::size_t i = 0; i < rows[r].size(); ++i)
            line += (i == 0 ? "" : "  ") +
                    (i < 3 ? right(rows[r][i], widths[i]) : left(rows[r][i], widths[i]));
        if (r > 0 && fitted.front[r - 1].flash > wish.flash) line += "  beyond the budget";
        line.resize(line.find_last_not_of(' ') + 1);
        text += line + '\n';
    }
}

void add_faces_of(std::string& text,
                  const Layout& layout,
                  const Fitting& fitting,
                  const FitWish& wish) {
    std::size_t name_width = 4, font_width = 4;
    for (std::size_t i = 0; i < fitting.faces.size(); ++i) {
        name_width = std::max(name_width, layout.faces[i].name.size());
        font_width = std::max(font_width, font_of(fitting.faces[i].choice).size());
    }
    for (std::size_t i = 0; i < fitting.faces.size(); ++i) {
        const Fitting::FaceState& state = fitting.faces[i];
        const Face& face = layout.faces[i];
        const bool raster = face.kind == FaceKind::raster;
        std::string line = "  " + left(face.name, name_width) + "  " +
                           left(raster ? font_of(state.choice) : "segments", font_width) + "  " +
                           right(raster ? std::to_string(state.choice.size * face.scale) : "", 3) +
                           (raster ? " px" : "   ") + "  " +
                           right(state.angle ? number(state.angle->value, 1) + "'" : "-", 7) +
                           "  " + left(state.packing, 7) + "  " +
                           right(grouped(state.bytes.value), 6);
        std::vector<std::string> remarks;
        if (state.choice.smooth)
            remarks.emplace_back(face.smooth ? "smoothed" : "smoothed, was not");
        else if (face.smooth)
            remarks.emplace_back("was smoothed");
        if (state.choice.file != face.file)
            remarks.push_back("instead of " + font_of({face.file, 0}));
        if (state.choice.size != face.size)
            remarks.push_back("was " + std::to_string(face.size * face.scale) + " px");
        const bool kept = std::find(wish.keep.begin(), wish.keep.end(), static_cast<FaceId>(i)) !=
                          wish.keep.end();
        if (kept)
            remarks.emplace_back("kept");
        else if (!face.latitude && raster)
            remarks.emplace_back("no \"may\": font and size stay");
        for (std::size_t r = 0; r < remarks.size(); ++r)
            line += (r == 0 ? "  " : ", ") + remarks[r];
        text += line + '\n';
    }
}

Json state_json(const Layout& layout, const Fitting& fitting) {
    Json faces = Json::array();
    for (std::size_t i = 0; i < fitting.faces.size(); ++i) {
        const Fitting::FaceState& state = fitting.faces[i];
        faces.push_back({{"name", layout.faces[i].name},
                         {"file", state.choice.file},
                         {"size", state.choice.size},
                         {"smooth", state.choice.smooth},
                         {"packing", state.packing},
                         {"bytes", state.bytes.value},
                         {"arcmin", state.angle ? Json(state.angle->value) : Json()}});
    }
    Json unmet = Json::array();
    for (const Finding& finding : fitting.unmet)
        unmet.push_back(
            {{"rule", finding.rule}, {"item", finding.pointer}, {"message", finding.message}});
    return {{"bytes", fitting.flash.value},
            {"margin", std::isfinite(fitting.margin) ? Json(fitting.margin) : Json()},
            {"faces", std::move(faces)},
            {"unmet", std::move(unmet)}};
}

}  // namespace

std::string fit_text(const Layout& layout, const Fit& fitted, const FitWish& wish) {
    std::string text = layout.title + ": the whole display takes " +
                       grouped(fitted.as_it_is.flash.value) + " bytes as it is, " +
                       grouped(wish.flash.value) + " may be used\n";
    bool any = false;
    for (std::size_t i = 0; i < layout.faces.size(); ++i)
        any = any || may_change(layout, i, wish);
    if (!any)
        text +=
            "No face may change but in its packing: give a face a \"may\", such as \"may\": "
            "{\"size\": "
            "[16, 40]}.\n";
    for (const Finding& finding : fitted.standing)
        text += "Left aside, since no face mends it: " + gnu_line(layout.file, finding) + '\n';
    if (fitted.chosen) {
        const std::int64_t spare = wish.flash.value - fitted.chosen->flash.value;
        text += "\nChosen: " + grouped(fitted.chosen->flash.value) + " bytes, " + grouped(spare) +
                " to spare\n";
        add_faces_of(text, layout, *fitted.chosen, wish);
    } else if (fitted.nearest && fitted.nearest->unmet.empty()) {
        text += "\nNothing fits. The least is " + grouped(fitted.nearest->flash.value) +
                " bytes, " + grouped(fitted.nearest->flash.value - wish.flash.value) +
                " too many:\n";
        add_faces_of(text, layout, *fitted.nearest, wish);
    } else if (fitted.nearest) {
        text += "\nNothing keeps every \"must\". Nearest is, with " +
                grouped(fitted.nearest->flash.value) + " bytes:\n";
        add_faces_of(text, layout, *fitted.nearest, wish);
        for (const Finding& finding : fitted.nearest->unmet)
            text += gnu_line(layout.file, finding) + '\n';
    } else {
        text += "\nNothing fits: a face cannot be had in any way its \"may\" allows.\n";
    }
    add_front(text, layout, fitted, wish);
    return text;
}

std::string fit_json(const Layout& layout, const Fit& fitted, const FitWish& wish) {
    Json front = Json::array();
    for (const Fitting& fitting : fitted.front)
        front.push_back(state_json(layout, fitting));
    Json standing = Json::array();
    for (const Finding& finding : fitted.standing)
        standing.push_back(
            {{"rule", finding.rule}, {"item", finding.pointer}, {"message", finding.message}});
    const Json result = {{"budget", wish.flash.value},
                         {"required_arcmin", required_angle(layout).value},
                         {"as_it_is", state_json(layout, fitted.as_it_is)},
                         {"chosen", fitted.chosen ? state_json(layout, *fitted.chosen) : Json()},
                         {"nearest", fitted.nearest ? state_json(layout, *fitted.nearest) : Json()},
                         {"front", std::move(front)},
                         {"standing", std::move(standing)},
                         {"tried", fitted.tried}};
    return result.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace dialplate
