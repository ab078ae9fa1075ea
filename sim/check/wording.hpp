// How rules put down what they found: figures, and the names of things in sentences.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// What was measured, what was asked for, and the unit of both.
struct Figure {
    double measured = 0;
    double required = 0;
    const char* unit = "";
};

/// Appends a finding with a figure.
/// @param pointer  JSON Pointer of the thing that is wrong.
/// @param source   Where `required` comes from; null: the source of the rule.
void add_finding(std::vector<Finding>& found,
                 Severity severity,
                 const std::string& pointer,
                 Figure figure,
                 std::string message,
                 const char* source = nullptr);

/// Appends a finding that has nothing to measure.
void add_finding(std::vector<Finding>& found,
                 Severity severity,
                 const std::string& pointer,
                 std::string message);

/// `key "40 m"`; an item named after its kind ("key 3") stands without quotes.
std::string called(const Item& item);

/// `face "legend"`.
std::string called(const Face& face);

const char* word_of(ItemKind kind);

/// A number with so many decimals, ties as printf has them.
std::string number(double value, int decimals = 0);

/// A number with up to three decimals, without needless zeros: `9.2`, `15`.
std::string short_number(double value);

/// `9.2 mm`, `4.5:1`, `16'`.
std::string with_unit(double value, std::string_view unit);

/// `1 row`, `2 rows`.
std::string counted(long long count, const char* one, const char* many);

}  // namespace dialplate
