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
    EXPECT_FALSE(weighing.has_news());
    EXPECT_FALSE(weighing.weight(face("dial"))) << "not weighed yet";
    weighing.weight(face("figures"));
    weighing.weight(face("none such"));
    weighing.wait();
    EXPECT_TRUE(weighing.has_news());
    EXPECT_FALSE(weighing.has_news()) << "told once";
    ASSERT_TRUE(weighing.weight(face("dial")));
    EXPECT_EQ(weighing.weight(face("dial"))->more, 0) << "the face that it has";
    EXPECT_LT(weighing.weight(face("figures"))->more.value_or(0), 0) << "one face fewer";
    EXPECT_FALSE(weighing.weight(face("none such"))->more.has_value());
    EXPECT_NE(weighing.weight(face("none such"))->obstacle, "");
    // The face in its packings: it is stored in the one that it is said to be.
    const std::optional<Weighed> dial = weighing.weight(face("dial"));
    const WeighedPackings* stored = dial->face("dial");
    ASSERT_NE(stored, nullptr);
    EXPECT_EQ(stored->bytes,
              stored->packing == "plain"  ? stored->plain
              : stored->packing == "runs" ? stored->runs
                                          : stored->context);
    EXPECT_EQ(dial->face("none such"), nullptr);
    // Another document forgets them.
    weighing.begin(2, text, file);
    EXPECT_FALSE(weighing.weight(face("dial")));
}

TEST(FlashWeighing, EndsInTheMiddleOfItsWork) {
    const std::string file = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";
    std::ifstream in(file, std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(in), {});
    FlashWeighing weighing;
    weighing.begin(1, text, file);
    for (int size = 4; size < 60; ++size)
        weighing.weight({{Change::Kind::replace, "/faces/dial/size", std::to_string(size)}});
    const std::vector<Change> size_4{{Change::Kind::replace, "/faces/dial/size", "4"}};
    weighing.begin(2, text + " ", file);
    const std::vector<Change> other{{Change::Kind::replace, "/faces/dial/size", "24"}};
    weighing.weight(other);
    weighing.wait();
    EXPECT_TRUE(weighing.weight(other));
    EXPECT_FALSE(weighing.weight(size_4)) << "that was of the document before";
    // A font may be another by now.
    weighing.forget();
    EXPECT_FALSE(weighing.weight(other));
    for (int size = 4; size < 60; ++size)
        weighing.weight({{Change::Kind::replace, "/faces/dial/size", std::to_string(size)}});
}

TEST(FlashWeighing, TellsNoDifferenceFromWhatCannotBeWeighed) {
    const std::string file = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";
    std::ifstream in(file, std::ios::binary);
    std::string text(std::istreambuf_iterator<char>(in), {});
    const std::size_t face = text.find("\"face\": \"dial\"");
    ASSERT_NE(face, std::string::npos);
    text.replace(face, 14, "\"face\": \"dail\"");
    FlashWeighing weighing;
    weighing.begin(1, text, file);
    const std::vector<Change> mended{{Change::Kind::replace, "/pages/0/items/1/face", "\"dial\""}};
    weighing.weight(mended);
    weighing.wait();
    const std::optional<Weighed> weighed = weighing.weight(mended);
    ASSERT_TRUE(weighed);
    EXPECT_FALSE(weighed->more);
    EXPECT_NE(weighed->obstacle, "");
}

}  // namespace
}  // namespace dialplate
