#include "sim/check/check.hpp"

#include "sim/check/report.hpp"
#include "sim/commands/commands.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <algorithm>
#include <iostream>
#include <iterator>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

struct Wish {
    std::vector<std::string> layouts;
    bool json = false;
    bool sarif = false;
};

void append(std::vector<Finding>& to, std::vector<Finding> more) {
    std::move(more.begin(), more.end(), std::back_inserter(to));
}

/// Everything that can be found out about one layout: as far as it can be used.
Report examine(const std::string& file) {
    Report report;
    report.file = file;
    Reading reading = load_layout(file);
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

bool unusable(const Report& report) {
    return std::any_of(report.findings.begin(), report.findings.end(), [](const Finding& finding) {
        return finding.severity == Severity::error;
    });
}

void print_lines(const std::vector<Report>& reports) {
    std::vector<Report> mistaken;
    std::vector<Report> judged;
    for (const Report& report : reports) {
        (unusable(report) ? mistaken : judged).push_back(report);
    }
    if (!mistaken.empty()) {
        std::cerr << tinted(report_lines(mistaken), colour_on(Stream::errors));
    }
    if (!judged.empty()) {
        std::cout << tinted(report_lines(judged), colour_on(Stream::results));
    }
}

void check_layouts(const Wish& wish, ExitStatus& status) {
    std::vector<Report> reports;
    for (const std::string& file : wish.layouts) {
        reports.push_back(examine(file));
    }
    if (wish.sarif) {
        std::cout << report_sarif(reports);
    } else if (wish.json) {
        std::cout << report_json(reports);
    } else {
        print_lines(reports);
    }
    status.add(exit_status(reports));
}

}  // namespace

void add_check(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<Wish>();
    CLI::App* command = program.add_subcommand(
        "check", "Check legibility, touch, contrast, bezel, flash and time.");
    command->add_option("LAYOUT", wish->layouts, "Layout files; - is standard input")->required();
    CLI::Option* json = command->add_flag("--json", wish->json, "As JSON");
    command->add_flag("--sarif", wish->sarif, "As SARIF 2.1.0, for code-scanning tools")
        ->excludes(json);
    command->footer(
        "Exit status: 0 nothing that must be mended, 1 something must, 2 unusable input or wrong\n"
        "usage. Findings go to standard output, mistakes in a layout document to standard error.");
    command->callback([wish, &status] { check_layouts(*wish, status); });
}

}  // namespace dialplate
