#include "sim/check/check.hpp"

#include "sim/check/explanation.hpp"
#include "sim/check/report.hpp"
#include "sim/commands/commands.hpp"
#include "sim/commands/cure_layout.hpp"
#include "sim/commands/examined.hpp"
#include "sim/commands/grouped_findings.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/reader.hpp"
#include "sim/layout/suggestion.hpp"

#include <algorithm>
#include <iostream>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

struct CheckArguments {
    std::vector<std::string> layouts;
    bool json = false;
    bool sarif = false;
    bool lines = false;
    bool grouped = false;
    std::string rule;  ///< To be explained.
    bool cure = false;
    std::string output;
};

bool unusable(const Report& report) {
    return std::any_of(report.findings.begin(), report.findings.end(), [](const Finding& finding) {
        return finding.severity == Severity::error;
    });
}

/// What could be judged to standard output, mistakes in documents to standard error.
void print_findings(const std::vector<Report>& reports, bool one_a_line) {
    std::vector<Report> mistaken;
    std::vector<Report> judged;
    for (const Report& report : reports) {
        (unusable(report) ? mistaken : judged).push_back(report);
    }
    if (!mistaken.empty()) {
        std::cerr << tinted(report_lines(mistaken), colour_on(Stream::errors));
    }
    if (judged.empty()) {
        return;
    }
    if (one_a_line) {
        std::cout << tinted(report_lines(judged), colour_on(Stream::results));
    } else {
        std::cout << grouped_findings(
            judged, {.width = columns_of_results(), .colour = colour_on(Stream::results)});
    }
}

void print(const std::vector<Report>& reports, const CheckArguments& wish) {
    if (wish.sarif) {
        std::cout << report_sarif(reports);
    } else if (wish.json) {
        std::cout << report_json(reports);
    } else {
        print_findings(reports, wish.lines || !(wish.grouped || on_terminal(Stream::results)));
    }
}

void check_layouts(const CheckArguments& wish, ExitStatus& status) {
    std::vector<Report> reports;
    for (const std::string& file : wish.layouts) {
        reports.push_back(examine(file));
    }
    print(reports, wish);
    status.add(exit_status(reports));
}

void cure_layouts(const CheckArguments& wish, ExitStatus& status) {
    if (!wish.output.empty() && wish.layouts.size() > 1) {
        complain("--output takes one layout, found are " + std::to_string(wish.layouts.size()));
        status.add(ExitStatus::unusable);
        return;
    }
    std::vector<Report> reports;
    for (const std::string& file : wish.layouts) {
        if (file == "-" && wish.output.empty()) {
            complain("standard input cannot be cured in place: --output says where to");
            status.add(ExitStatus::unusable);
            return;
        }
        std::optional<CuredFile> cured = cure_layout({.file = file, .output = wish.output});
        if (!cured) {
            status.add(ExitStatus::unusable);
            continue;
        }
        // Standard output may hold the document, or something for programs.
        const bool taken = wish.output == "-" || wish.json || wish.sarif;
        (taken ? std::cerr : std::cout) << cured->account;
        reports.push_back(std::move(cured->report));
    }
    if (wish.output != "-") {
        print(reports, wish);
    }
    status.add(exit_status(reports));
}

std::string unknown_rule(const std::string& name) {
    std::vector<std::string_view> names;
    for (const Rule& rule : rules()) {
        names.emplace_back(rule.name);
    }
    const std::string_view near = nearest(name, names);
    return "there is no rule " + quote(name) +
           (near.empty() ? "; dialplate check --explain lists them"
                         : ", did you mean " + quote(near) + "?");
}

void explain(const CheckArguments& wish, ExitStatus& status) {
    if (wish.rule.empty()) {
        std::cout << listed_rules(columns_of_results());
        return;
    }
    const Rule* const rule = rule_named(wish.rule);
    if (rule == nullptr) {
        complain(unknown_rule(wish.rule));
        status.add(ExitStatus::unusable);
        return;
    }
    if (wish.layouts.empty()) {
        std::cout << explained(*rule, nullptr, columns_of_results());
        return;
    }
    for (const std::string& file : wish.layouts) {
        const Reading reading = load_layout(file);
        complain(file, reading.findings);
        if (!reading.layout) {
            status.add(ExitStatus::unusable);
            continue;
        }
        std::cout << explained(*rule, &*reading.layout, columns_of_results());
    }
}

}  // namespace

void add_check(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<CheckArguments>();
    CLI::App* command = program.add_subcommand(
        "check", "Check legibility, touch, contrast, bezel, flash and time.");
    command->add_option("LAYOUT", wish->layouts, "Layout files; - is standard input");
    CLI::Option* json = command->add_flag("--json", wish->json, "As JSON");
    CLI::Option* sarif =
        command->add_flag("--sarif", wish->sarif, "As SARIF 2.1.0, for code-scanning tools")
            ->excludes(json);
    CLI::Option* lines =
        command->add_flag("--lines", wish->lines, "One line a finding, as compilers print them")
            ->excludes(json)
            ->excludes(sarif);
    command->add_flag("--grouped", wish->grouped, "By severity and rule, as on a terminal")
        ->excludes(json)
        ->excludes(sarif)
        ->excludes(lines);
    CLI::Option* cure = command->add_flag(
        "--cure", wish->cure, "Write cures into the layout where there is just one");
    command->add_option("-o,--output", wish->output, "With --cure: file that is written instead")
        ->needs(cure);
    CLI::Option* explanation =
        command
            ->add_option("--explain", wish->rule, "What a rule computes and from what; lists all")
            ->expected(0, 1)
            ->excludes(cure)
            ->type_name("[RULE]");
    command->footer(
        "Exit status: 0 nothing that must be mended, 1 something must, 2 unusable input or wrong\n"
        "usage. Findings go to standard output, mistakes in a layout document to standard error. "
        "On\n"
        "a terminal they are grouped, elsewhere one line each.");
    command->callback([wish, explanation, &status] {
        if (explanation->count() > 0) {
            explain(*wish, status);
        } else if (wish->layouts.empty()) {
            throw CLI::RequiredError("LAYOUT");
        } else if (wish->cure) {
            cure_layouts(*wish, status);
        } else {
            check_layouts(*wish, status);
        }
    });
}

}  // namespace dialplate
