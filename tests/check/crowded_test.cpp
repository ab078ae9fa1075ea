// layouts/crowded.json is wrong on purpose: every rule of the list has a case in it.
#include "sim/check/check.hpp"
#include "sim/check/report.hpp"
#include "sim/layout/reader.hpp"

#include <gtest/gtest.h>

#include <set>

namespace dialplate {
namespace {

Report examine_crowded() {
    Report report{.file = DIALPLATE_TREE "/layouts/crowded.json", .findings = {}};
    const Reading reading = load_layout(report.file);
    report.findings = reading.findings;
    if (!reading.layout) return report;
    const Building building = build_image(*reading.layout);
    report.findings.insert(
        report.findings.end(), building.findings.begin(), building.findings.end());
    if (!building.image) return report;
    const Ledger ledger = account(*reading.layout, *building.image);
    const auto found =
        check({.layout = *reading.layout, .image = *building.image, .ledger = ledger});
    report.findings.insert(report.findings.end(), found.begin(), found.end());
    return report;
}

}  // namespace

TEST(Crowded, CanBeReadAndBuilt) {
    for (const Finding& finding : examine_crowded().findings) {
        EXPECT_NE(finding.severity, Severity::error) << finding.message;
        EXPECT_GT(finding.place.line, 0) << finding.message;
    }
}

TEST(Crowded, HasACaseForEveryRule) {
    std::set<std::string> named;
    for (const Finding& finding : examine_crowded().findings)
        if (counts(finding)) named.insert(finding.rule);
    for (const Rule& rule : rules())
        EXPECT_TRUE(named.contains(rule.name)) << rule.name;
}

TEST(Crowded, EndsWithStatusOne) {
    const Report reports[] = {examine_crowded()};
    EXPECT_EQ(exit_status(reports), 1);
}

TEST(Crowded, ShowsAWaiverThatAcceptsSomething) {
    int waived = 0;
    for (const Finding& finding : examine_crowded().findings)
        waived += counts(finding) ? 0 : 1;
    EXPECT_EQ(waived, 1);
}

}  // namespace dialplate
