// Finds types of one program that have the same name in different files: the linker takes one of each of their
// functions for both, without a word ([basic.def.odr] in the C++ standard).
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// A type that is defined outside unnamed namespaces.
struct NamedType {
    std::string name;  ///< With its namespaces and the types around it: "dialplate::port::Letter".
    std::string file;  ///< From the top of the tree.
    int line = 0;      ///< From 1.
};

/// The types that `text` defines, those in unnamed namespaces and in functions left out; specialisations of
/// templates, too. A name in two branches of an #if comes twice.
std::vector<NamedType> types_defined(const std::string& file, const std::string& text);

/// Those of ui/, fonts/ and sim/ below `tree`, and of each folder of its tests/, which one program may hold beside
/// others of their name: "sim/a.hpp:3: error: dialplate::X is also in sim/b.cpp:8 [type-names]".
std::vector<std::string> types_of_one_name(const std::filesystem::path& tree);

}  // namespace dialplate
