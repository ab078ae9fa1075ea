#include "sim/commands/examined.hpp"

#include "sim/check/check.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/layout/source_text.hpp"
#include "sim/ledger/ledger.hpp"

#include <filesystem>
#include <iterator>
#include <utility>

namespace dialplate {
namespace {

void append(std::vector<Finding>& to, std::vector<Finding> more) {
    std::move(more.begin(), more.end(), std::back_inserter(to));
}

std::string folder_of(const std::string& file) {
    const std::string folder =
        file == "-" ? "" : std::filesystem::path(file).parent_path().string();
    return folder.empty() ? "." : folder;
}

}  // namespace

Report examine(const std::string& file) {
    Report unread{.file = file, .findings = {}};
    Mistakes mistakes(unread.findings);
    const std::optional<std::string> text = load_text(file, mistakes);
    return text ? examine_text(*text, file) : unread;
}

Report examine_text(const std::string& text, const std::string& file) {
    Report report{.file = file, .findings = {}, .text = text};
    Reading reading = read_layout(text, file, folder_of(file));
    append(report.findings, std::move(reading.findings));
    if (reading.layout) {
        Building building = build_image(*reading.layout);
        append(report.findings, std::move(building.findings));
        if (building.image) {
            const Ledger ledger = account(*reading.layout, *building.image);
            append(report.findings,
                   check({.layout = *reading.layout, .image = *building.image, .ledger = ledger}));
        }
    }
    sort_by_place(report.findings);
    return report;
}

}  // namespace dialplate
