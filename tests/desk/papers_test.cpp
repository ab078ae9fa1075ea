// What becomes of changes that parts of the window ask for, without a window.
#include "sim/desk/papers.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

/// A copy of the first example in a folder of its own.
class PapersOnTheBench : public testing::Test {
protected:
    void SetUp() override {
        const std::string example = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";
        std::ifstream in(example, std::ios::binary);
        original_ = {std::istreambuf_iterator<char>(in), {}};
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        const fs::path folder = fs::path{DIALPLATE_OUT} / "papers" / test->name();
        fs::create_directories(folder);
        file_ = (folder / "layout.json").string();
    }
    void lay(const std::string& text) {
        std::ofstream(file_, std::ios::binary) << text;
        piece_ = std::make_unique<Workpiece>(file_, false);
        bench_ = std::make_unique<Bench>(*piece_, session_);
        papers_ = std::make_unique<Papers>(*bench_);
        papers_->open();
    }
    std::string with(const std::string& was, const std::string& is) const {
        std::string text = original_;
        text.replace(text.find(was), was.size(), is);
        return text;
    }
    std::string change(const std::string& pointer, const std::string& value) {
        Wanted wanted;
        wanted.changes = {{Change::Kind::replace, pointer, value}};
        wanted.member = pointer;
        return papers_->change(wanted);
    }

    std::string original_, file_;
    Session session_;
    std::unique_ptr<Workpiece> piece_;
    std::unique_ptr<Bench> bench_;
    std::unique_ptr<Papers> papers_;
};

TEST_F(PapersOnTheBench, AChangeThatCannotBeReadStaysAtItsMemberAndLeavesTheText) {
    lay(original_);
    EXPECT_NE(change("/pages/0/items/1/drop", "11"), "");
    EXPECT_EQ(session_.text(), original_);
    ASSERT_TRUE(bench_->refusal.has_value());
    EXPECT_EQ(bench_->refusal->member, "/pages/0/items/1/drop");
    EXPECT_NE(bench_->refusal->words.find("from 0 to 9"), std::string::npos);
    EXPECT_EQ(change("/pages/0/items/1/drop", "2"), "");
    EXPECT_FALSE(bench_->refusal.has_value()) << "the next change that is made takes it away";
}

TEST_F(PapersOnTheBench, AFileWithMistakesIsMendedOneByOne) {
    std::string broken = with("\"drop\": 1,", "\"drop\": 11,");
    broken.replace(broken.find("\"least\": 6"), 10, "\"least\": 77");
    lay(broken);
    ASSERT_EQ(piece_->mistakes().size(), 2u);
    EXPECT_NE(change("/pages/0/items/1/drop", "12"), "") << "no better than before";
    EXPECT_EQ(session_.text(), broken);
    EXPECT_EQ(change("/pages/0/items/1/drop", "1"), "");
    EXPECT_EQ(piece_->mistakes().size(), 1u);
    EXPECT_EQ(piece_->prototype(), nullptr) << "nothing to show yet";
    EXPECT_EQ(change("/pages/0/items/1/least", "6"), "");
    EXPECT_TRUE(piece_->mistakes().empty());
    EXPECT_NE(piece_->prototype(), nullptr);
    EXPECT_EQ(session_.text(), original_);
}

TEST_F(PapersOnTheBench, TheAccountOfTheLastSaveKeepsAFaceThatIsGone) {
    lay(original_);
    piece_->judge();
    bench_->note_saved();
    const std::vector<std::string> faces = bench_->saved->faces;
    ASSERT_EQ(faces.size(), 3u);
    // "figures" is used by one readout: that takes another face, then the face goes.
    std::string text = original_;
    const std::size_t use = text.find("\"face\": \"figures\"");
    ASSERT_NE(use, std::string::npos);
    text.replace(use, 17, "\"face\": \"dial\"");
    const std::size_t begin = text.find("    \"figures\":");
    text.erase(begin, text.find('\n', begin) + 1 - begin);
    Wanted wanted;
    wanted.text = text;
    EXPECT_EQ(papers_->change(wanted), "");
    EXPECT_EQ(piece_->layout().faces.size(), 2u);
    EXPECT_EQ(bench_->saved->faces, faces);
    EXPECT_EQ(bench_->saved->flash.faces.size(), 3u);
}

}  // namespace
}  // namespace dialplate
