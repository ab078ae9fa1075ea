// A layout with one of everything that a small part can show, on a small glass, and proofs of it that are
// over in a second.
#pragma once

#include "sim/image/build.hpp"
#include "sim/prove/proof.hpp"

#include <string>
#include <utility>
#include <vector>

namespace dialplate {

struct Ready {
    Layout layout;
    BuiltImage image;
};

/// The document; `edits` are made in it first, each in exactly one place.
std::string small_document(const std::string& bus,
                           const std::vector<std::pair<std::string, std::string>>& edits = {});

/// Read and built; a mistake fails the test.
Ready small(const std::string& bus,
            const std::vector<std::pair<std::string, std::string>>& edits = {});

/// Replaces the one place where `from` stands; none or several throw.
void replace_one(std::string& text, const std::string& from, const std::string& to);

/// Throws without avr-g++ and avr-libc.
const Toolchain& toolchain();

/// Enough to cross the greatest carries both ways; the program itself plays a thousand steps.
ProofOptions short_scenario();
/// The same without linking once more for sizes.
ProofOptions unweighed();

}  // namespace dialplate
