#include "sim/desk/weighing.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace dialplate {
namespace {

TEST(FlashWeighing, SaysWhatAnotherFaceWouldCostAndWhyOneCannotBe) {
    const std::string file = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";
    std::ifstream in(file, std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(in), {});
    FlashWeighing weighing;
    weighing.begin(1, text, file);
    const auto face = [](const std::string& name) {
        return std::vector<Change>{
            {Change::Kind::replace, "/pages/0/items/1/face", "\"" + name + "\""}};
    };
    EXPECT_EQ(weighing.weight(face("dial")), nullptr) << "not weighed yet";
    weighing.weight(face("figures"));
    weighing.weight(face("none such"));
    int weighed = 0;
    // Each one weighed is news, the last one, too.
    while (weighing.weigh_one())
        ++weighed;
    EXPECT_EQ(weighed, 3);
    ASSERT_NE(weighing.weight(face("dial")), nullptr);
    EXPECT_EQ(weighing.weight(face("dial"))->more, 0) << "the face that it has";
    EXPECT_LT(weighing.weight(face("figures"))->more.value_or(0), 0) << "one face fewer";
    EXPECT_FALSE(weighing.weight(face("none such"))->more.has_value());
    EXPECT_NE(weighing.weight(face("none such"))->obstacle, "");
    // Another document forgets them.
    weighing.begin(2, text, file);
    EXPECT_EQ(weighing.weight(face("dial")), nullptr);
}

}  // namespace
}  // namespace dialplate
