// The whole window without a screen, on SDL's dummy driver: what hands and desktop do comes as events.
#include "sim/desk/workplace.hpp"

#include <SDL.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

class WorkplaceTest : public testing::Test {
protected:
    void SetUp() override {
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = fs::path{DIALPLATE_OUT} / "workplace" / test->name();
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        for (const char* name : {"coast-listener.json", "trail-cw.json", "mast.png"})
            fs::copy(fs::path{DIALPLATE_TREE} / "layouts" / name, folder_);
        setenv("SDL_VIDEODRIVER", "dummy", 1);
        setenv("XDG_STATE_HOME", (folder_ / "state").c_str(), 1);
        open("coast-listener.json");
    }
    void open(const std::string& name) {
        place_ = nullptr;
        place_ = std::make_unique<Workplace>((folder_ / name).string(),
                                             WindowWish{.zoom = 0, .live = false});
        ASSERT_EQ(place_->open(), "");
        rest();
    }
    void rest() {
        for (int i = 0; i < 8; ++i)
            ASSERT_EQ(place_->step(), "");
    }
    void drop(const fs::path& file) {
        SDL_Event event{};
        event.type = SDL_DROPFILE;
        event.drop.file = SDL_strdup(file.c_str());
        place_->handle(event);
        rest();
    }
    void key(int code, int held = KMOD_NONE) {
        SDL_Event event{};
        event.type = SDL_KEYDOWN;
        event.key.keysym.sym = code;
        event.key.keysym.mod = static_cast<Uint16>(held);
        place_->handle(event);
        rest();
    }
    const Bench& bench() const { return place_->bench(); }
    std::string said() const { return bench().notice ? bench().notice->words : ""; }

    fs::path folder_;
    std::unique_ptr<Workplace> place_;
};

TEST_F(WorkplaceTest, ADroppedLayoutTakesThePlaceOfTheOneBefore) {
    const std::size_t before = bench().session.revision();
    drop(folder_ / "trail-cw.json");
    EXPECT_NE(bench().session.revision(), before) << "the side would go on with the old document";
    EXPECT_EQ(bench().piece.file(), (folder_ / "trail-cw.json").string());
    EXPECT_EQ(bench().piece.layout().title, "Trail CW, dial in DejaVu Sans Bold");
    EXPECT_EQ(said(), "");
}

TEST_F(WorkplaceTest, ADroppedLayoutDoesNotTakeUnsavedChangesAlong) {
    key(SDLK_F3);
    key(SDLK_n);
    key(SDLK_n);
    key(SDLK_LEFT);
    ASSERT_TRUE(bench().session.changed());
    drop(folder_ / "trail-cw.json");
    EXPECT_EQ(bench().piece.layout().title, "Coast listener");
    EXPECT_EQ(said(), "Save or undo your changes before opening another layout.");
    EXPECT_TRUE(bench().session.changed());
}

TEST_F(WorkplaceTest, ADroppedFontBecomesAFaceAndADroppedPictureAnItem) {
    const std::size_t faces = bench().piece.layout().faces.size();
    drop(fs::path{DIALPLATE_TREE} / "fonts" / "figures32.bdf");
    ASSERT_EQ(bench().piece.layout().faces.size(), faces + 1);
    EXPECT_EQ(said(), "There is a face \"figures32\" now; items can choose it.");
    EXPECT_EQ(bench().piece.layout().faces.back().size, 32);

    const std::size_t items = bench().piece.layout().pages[0].items.size();
    drop(folder_ / "mast.png");
    ASSERT_EQ(bench().piece.layout().pages[0].items.size(), items + 1);
    EXPECT_EQ(bench().piece.layout().pages[0].items.back().picture.file, "mast.png");
    EXPECT_EQ(bench().session.chosen().size(), 1u);
}

TEST_F(WorkplaceTest, WhatCannotBeUsedIsSaidWithItsName) {
    std::ofstream(folder_ / "notes.txt") << "no layout";
    drop(folder_ / "notes.txt");
    EXPECT_EQ(said().substr(0, 22), "\"notes.txt\" is neither") << said();
    drop(folder_ / "gone.json");
    EXPECT_FALSE(bench().piece.mistakes().empty());
    EXPECT_FALSE(bench().piece.can_be_read());
}

TEST_F(WorkplaceTest, OpensOnAFileThatIsNotThereAndShowsItOnceItIs) {
    open("later.json");
    EXPECT_EQ(bench().piece.prototype(), nullptr);
    for (const int code : {SDLK_F3, SDLK_F4, SDLK_t, SDLK_F5, SDLK_n, SDLK_F1, SDLK_F1, SDLK_PLUS})
        key(code);
    drop(folder_ / "coast-listener.json");
    EXPECT_NE(bench().piece.prototype(), nullptr);
}

TEST_F(WorkplaceTest, ATrialEndsWhenTheLayoutChangesUnderIt) {
    key(SDLK_F5);
    ASSERT_NE(bench().trial, nullptr);
    ASSERT_NE(bench().trial->task(), nullptr);
    key(SDLK_F3);
    EXPECT_EQ(bench().trial, nullptr) << "nothing was done: there is nothing to look at";
    key(SDLK_F5);
    EXPECT_EQ(bench().mode, Mode::operate);
    ASSERT_NE(bench().trial, nullptr);
    drop(folder_ / "trail-cw.json");
    EXPECT_EQ(bench().trial, nullptr);
    EXPECT_EQ(said(), "The trial is over: the layout changed.");
}

}  // namespace
}  // namespace dialplate
