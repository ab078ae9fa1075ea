#include "tests/house/type_names.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> names_in(const std::string& text) {
    std::vector<std::string> names;
    for (const NamedType& type : types_defined("a.cpp", text))
        names.push_back(type.name);
    return names;
}

TEST(TypeNames, NoProgramHasTwoTypesOfOneName) {
    EXPECT_THAT(types_of_one_name(DIALPLATE_TREE), IsEmpty());
}

TEST(TypeNames, AreThoseThatTheLinkerSees) {
    EXPECT_THAT(names_in("namespace a {\n"
                         "struct One { int x; };\n"
                         "class Two final : public One { struct Inner {}; };\n"
                         "template <class T, int n>\n"
                         "struct Three : One {};\n"
                         "enum class Four : int { x };\n"
                         "namespace { struct Hidden {}; }\n"
                         "}\n"
                         "namespace a::b { union Five { int x; }; }\n"
                         "struct a::Two::Other : a::One {};\n"),
                ElementsAre("a::One",
                            "a::Two",
                            "a::Two::Inner",
                            "a::Three",
                            "a::Four",
                            "a::b::Five",
                            "a::Two::Other"));
}

TEST(TypeNames, LeaveOutWhatDefinesNoNameOfItsOwn) {
    EXPECT_THAT(names_in("struct Announced;\n"
                         "struct Used made() { struct Local {}; return {}; }\n"
                         "template <> struct Special<int> {};\n"
                         "struct { int x; } without_name;\n"
                         "const char* text = \"struct Quoted {\"; // struct Noted {\n"
                         "/* struct Remarked { */ const char* more = R\"(struct Raw {)\";\n"
                         "#define STRUCT struct Defined {\n"
                         "int n = 10'000; char c = '{';\n"
                         "struct Seen {};\n"),
                ElementsAre("Seen"));
}

TEST(TypeNames, OfOneProgramAreToldByFileAndLine) {
    const fs::path tree = fs::path{DIALPLATE_OUT} / "type_names";
    fs::remove_all(tree);
    const auto plant = [&tree](const std::string& file) {
        fs::create_directories((tree / file).parent_path());
        std::ofstream(tree / file) << "namespace d {\nstruct Twin {};\n}\n";
    };
    plant("tests/one/a_test.cpp");
    plant("tests/two/a_test.cpp");
    EXPECT_THAT(types_of_one_name(tree), IsEmpty());  // two programs
    plant("tests/two/b_test.cpp");
    EXPECT_THAT(types_of_one_name(tree),
                ElementsAre("tests/two/b_test.cpp:2: error: d::Twin is also in "
                            "tests/two/a_test.cpp:2 [type-names]"));
    fs::remove_all(tree / "tests");
    plant("sim/x.cpp");
    plant("ui/y.hpp");
    EXPECT_THAT(types_of_one_name(tree),
                ElementsAre("ui/y.hpp:2: error: d::Twin is also in sim/x.cpp:2 [type-names]"));
    fs::remove_all(tree);
}

}  // namespace
}  // namespace dialplate
