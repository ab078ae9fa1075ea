// A sample layout with a dial: frequency, bands, modes and steps, for the rules of the trade.
#pragma once

#include "tests/check/sample.hpp"

#include <string>
#include <vector>

namespace dialplate::sample {

inline Value& add_value(Sample& s, const std::string& name, ValueType type, Role role) {
    Value value;
    value.name = name;
    value.type = type;
    value.role = role;
    value.pointer = "/values/" + name;
    s.layout.values.push_back(value);
    return s.layout.values.back();
}

inline void add_frequency(Sample& s, const std::string& unit, std::int32_t max) {
    Value& value = add_value(s, "frequency", ValueType::number, Role::frequency);
    value.unit = unit;
    value.max = max;
}

inline void add_choices(Value& value, const std::vector<Choice>& choices) {
    value.choices = choices;
    for (std::size_t i = 0; i < value.choices.size(); ++i)
        value.choices[i].pointer = value.pointer + "/choices/" + std::to_string(i);
}

/// A band of the dial with its edges, in the dial's unit.
inline Choice band(const std::string& text, std::int32_t low, std::int32_t high) {
    Choice choice;
    choice.text = text;
    choice.low = low;
    choice.high = high;
    return choice;
}

}  // namespace dialplate::sample
