#include "sim/edit/rescue.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

class RescueFile : public testing::Test {
protected:
    void SetUp() override {
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = fs::path{DIALPLATE_OUT} / "rescue" / test->name();
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        setenv("XDG_STATE_HOME", (folder_ / "state").c_str(), 1);
        layout_ = (folder_ / "layout.json").string();
    }
    static std::string text_of(const fs::path& file) {
        std::ifstream in(file, std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }
    fs::path folder_;
    std::string layout_;
};

TEST_F(RescueFile, GivesBackEveryByteUntilItIsForgotten) {
    EXPECT_FALSE(kept(layout_).has_value());
    const std::string text = "{\"title\": \"\xC2\xB5 \\u00b5\"}\r\n\t ";
    ASSERT_TRUE(keep({layout_, "{}", text}));
    const std::optional<Rescue> back = kept(layout_);
    ASSERT_TRUE(back.has_value());
    EXPECT_EQ(back->text, text);
    EXPECT_EQ(back->saved, "{}");
    forget(layout_);
    EXPECT_FALSE(kept(layout_).has_value());
}

TEST_F(RescueFile, BelongsToOneLayoutByWhateverNameItIsCalled) {
    ASSERT_TRUE(keep({layout_, "{}", "{ }"}));
    EXPECT_TRUE(kept((folder_ / "." / "layout.json").string()).has_value());
    EXPECT_FALSE(kept((folder_ / "other.json").string()).has_value());
}

TEST_F(RescueFile, ABrokenOneIsNoRescue) {
    ASSERT_TRUE(keep({layout_, "{}", "{ }"}));
    const std::string whole = text_of(rescue_file(layout_));
    for (const std::size_t length : {std::size_t{0}, std::size_t{1}, whole.size() / 2}) {
        std::ofstream(rescue_file(layout_)) << whole.substr(0, length);
        EXPECT_FALSE(kept(layout_).has_value()) << length;
    }
}

TEST_F(RescueFile, WritingWholeKeepsPermissionsAndLinks) {
    std::ofstream(layout_) << "old";
    fs::permissions(layout_, fs::perms::owner_read | fs::perms::owner_write);
    const fs::path link = folder_ / "link.json";
    fs::create_symlink(layout_, link);
    EXPECT_EQ(write_whole(link.string(), "new"), "");
    EXPECT_TRUE(fs::is_symlink(link));
    EXPECT_EQ(text_of(layout_), "new");
    EXPECT_EQ(fs::status(layout_).permissions(), fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_NE(write_whole((folder_ / "no folder" / "a.json").string(), "new"), "");
}

}  // namespace
}  // namespace dialplate
