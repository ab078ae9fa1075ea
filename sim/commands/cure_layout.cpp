#include "sim/commands/cure_layout.hpp"

#include "sim/check/check.hpp"
#include "sim/commands/commands.hpp"
#include "sim/commands/examined.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/commands/whole_file.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/source_text.hpp"

#include <algorithm>
#include <cstdint>
#include <span>
#include <utility>

namespace dialplate {
namespace {

/// A value as it is written, on one line and not too long.
std::string in_short(std::string_view value) {
    constexpr std::size_t longest = 60;
    std::string text;
    for (const char c : value) {
        const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
        if (!blank) {
            text += c;
        } else if (!text.empty() && text.back() != ' ') {
            text += ' ';
        }
    }
    if (text.size() <= longest) return text;
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u)
        --end;  // not within a character
    return text.substr(0, end) + "...";
}

std::string in_words(const Change& change, const std::string& document) {
    const auto written = written_at(document, change.pointer);
    const std::string was = written ? in_short(*written) : "nothing";
    switch (change.kind) {
        case Change::Kind::add:
            return change.pointer + ": " + in_short(change.value) + " added";
        case Change::Kind::remove:
            return change.pointer + ": " + was + " removed";
        case Change::Kind::replace:
            break;
    }
    return change.pointer + ": " + was + " becomes " + in_short(change.value);
}

}  // namespace

std::string cured_lines(const std::string& file, const std::string& before, const Cured& cured) {
    std::string text;
    // Each change is told against the document as the changes before have left it.
    std::string document = before;
    for (const Finding& finding : cured.cured) {
        text += gnu_line(file, finding) + '\n';
        for (const Change& change : finding.cure) {
            text += "    cured: " + in_words(change, document) + '\n';
            if (const Amended amended = amend(document, {&change, 1}); amended.text)
                document = *amended.text;
        }
    }
    for (const NotCured& refused : cured.refused)
        text += gnu_line(file, refused.finding) + "\n    not cured: " + refused.why + '\n';
    const auto left = std::count_if(cured.left.begin(), cured.left.end(), counts);
    return text + file + ": " + std::to_string(cured.cured.size()) + " cured, " +
           std::to_string(left) + " left\n";
}

std::optional<CuredFile> cure_layout(const CureWish& wish) {
    Report report{.file = wish.file, .findings = {}};
    Mistakes mistakes(report.findings);
    const std::optional<std::string> text = load_text(wish.file, mistakes);
    if (!text) return CuredFile{.report = std::move(report), .account = {}};
    Cured cured = cure(*text, [&wish](const std::string& document) {
        return examine_text(document, wish.file).findings;
    });
    report.text = cured.document;
    report.findings = std::move(cured.left);
    if (exit_status({&report, 1}) == ExitStatus::unusable)
        return CuredFile{.report = std::move(report), .account = {}};
    const std::string& target = wish.output.empty() ? wish.file : wish.output;
    const bool elsewhere = target != wish.file;
    if (elsewhere || cured.document != *text) {
        const auto* bytes = reinterpret_cast<const std::uint8_t*>(cured.document.data());
        const std::string trouble = write_whole(target, std::span(bytes, cured.document.size()));
        if (!trouble.empty()) {
            complain(trouble);
            return std::nullopt;
        }
    }
    cured.left = report.findings;
    std::string account = cured_lines(wish.file, *text, cured);
    if (elsewhere && target != "-") report.file = target;
    return CuredFile{.report = std::move(report), .account = std::move(account)};
}

}  // namespace dialplate
