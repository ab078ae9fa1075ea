// The side as it is drawn, without a window: whether it has room, and whether its buttons do what they say.
#include "sim/desk/member_editor.hpp"
#include "sim/desk/side_parts.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/layout/amend.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <functional>
#include <imgui_internal.h>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

namespace dialplate {
namespace {

const std::string layouts = std::string{DIALPLATE_TREE} + "/layouts/";
const std::string fonts = std::string{DIALPLATE_TREE} + "/fonts/";

std::string text_of(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

class DrawnSide : public testing::Test {
protected:
    DrawnSide() { ImGui::CreateContext(); }
    ~DrawnSide() override { ImGui::DestroyContext(); }

    void SetUp() override {
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {1000, 4000};
        ASSERT_EQ(faces_.small.load(fonts + "legend9.bdf", 9), "");
        ASSERT_EQ(faces_.words.load(fonts + "legend13.bdf", 13), "");
        ASSERT_EQ(faces_.large.load(fonts + "legend14.bdf", 14), "");
        type_ = letter(faces_);
        dress(1);
    }

    /// Lays a layout on the bench, in arrange, with everything open.
    void take(const std::string& name) {
        const std::string text = text_of(layouts + name);
        piece_ = std::make_unique<Workpiece>(layouts + name, false);
        session_ = Session(text);
        bench_ = std::make_unique<Bench>(*piece_, session_);
        ASSERT_TRUE(piece_->show(text));
        piece_->judge();
        bench_->schema = Schema::read(text_of(layouts + "layout.schema.json"));
        bench_->mode = Mode::arrange;
        for (auto& [title, open] : bench_->habits.sections)
            open = true;
        bench_->schema->visit(*bench_->document(),
                              [](const std::string& pointer, const Shape&, const Node&) {
                                  unfolded(pointer) = true;
                              });
    }

    using Drawing = std::function<void(SideFrame&)>;
    /// Some pictures, until all is laid out. @return Columns that the content has too much.
    float draw(float width, const Drawing& drawing) {
        float excess = 0;
        for (int picture = 0; picture < 3; ++picture) {
            ImGui::NewFrame();
            ImGui::SetNextWindowPos({0, 0});
            ImGui::SetNextWindowSize({width, 3900});
            ImGui::Begin("side", nullptr, ImGuiWindowFlags_NoDecoration);
            SideFrame side{*bench_, type_, 1.0f};
            drawing(side);
            const ImGuiWindow& window = *ImGui::GetCurrentWindow();
            excess = window.DC.CursorMaxPos.x - window.ContentRegionRect.Max.x;
            side_ = window.ID;
            ImGui::End();
            ImGui::Render();
        }
        return excess;
    }

    /// Presses the button of that label within a stack of texts and numbers.
    static ImGuiID within(ImGuiID id, const char* text) { return ImHashStr(text, 0, id); }
    static ImGuiID within(ImGuiID id, int number) { return ImHashData(&number, sizeof number, id); }
    void press(ImGuiID button, const Drawing& drawing) {
        draw(400, drawing);
        ASSERT_TRUE(bench_->wanted.empty()) << "wanted before anything was pressed";
        ImGui::ActivateItem(button);
        draw(400, drawing);
    }

    Faces faces_;
    Lettering type_;
    Session session_;
    std::unique_ptr<Workpiece> piece_;
    std::unique_ptr<Bench> bench_;
    ImGuiID side_ = 0;
};

/// 340 columns is the least that the plan gives the side; the bar of its scroll takes 9 of them. Dear ImGui measures
/// wrapped words a column wider than they are.
constexpr float least_room = 340 - 9;

TEST_F(DrawnSide, HasRoomForAllItsControlsAtItsLeastWidth) {
    for (const char* name : {"coast-listener.json", "bench-standard.json", "trail-cw.json"}) {
        SCOPED_TRACE(name);
        take(name);
        const auto& items = piece_->layout().pages[0].items;
        for (const Item& item : items) {
            SCOPED_TRACE(item.name);
            session_.choose({item.pointer});
            EXPECT_LE(draw(least_room, [](SideFrame& side) { draw_item(side); }), 1.0f);
        }
        session_.choose({items[0].pointer, items[1].pointer, items[2].pointer});
        EXPECT_LE(draw(least_room, [](SideFrame& side) { draw_item(side); }), 1.0f);
        session_.choose({});
        EXPECT_LE(draw(least_room, [](SideFrame& side) { draw_layout_members(side); }), 1.0f);
        EXPECT_LE(draw(least_room, [](SideFrame& side) { draw_ledger(side); }), 1.0f);
        EXPECT_LE(draw(least_room, [](SideFrame& side) { draw_findings(side); }), 1.0f);
        EXPECT_TRUE(bench_->wanted.empty()) << "drawing changes nothing";
    }
}

TEST_F(DrawnSide, RowsOfAListMoveGoAndCome) {
    take("coast-listener.json");
    const std::string list = "/values/mode/choices";
    const Drawing drawing = [](SideFrame& side) { draw_members(side, "/values/mode"); };
    const auto list_after = [&](const std::function<ImGuiID()>& button) {
        bench_->wanted.clear();
        draw(400, drawing);
        press(button(), drawing);
        EXPECT_EQ(bench_->wanted.size(), 1u);
        if (bench_->wanted.empty() || !bench_->wanted[0].text) return std::string{};
        return std::string(written_at(*bench_->wanted[0].text, list).value_or(""));
    };
    const auto row = [&](int i) { return within(within(side_, list.c_str()), i); };
    EXPECT_EQ(written_at(session_.text(), list), R"(["AM", "LSB", "USB", "CW"])");
    EXPECT_EQ(list_after([&] { return within(row(0), "\xE2\x96\xBC"); }),
              R"(["LSB", "AM", "USB", "CW"])");
    EXPECT_EQ(list_after([&] { return within(row(3), "\xE2\x96\xB2"); }),
              R"(["AM", "LSB", "CW", "USB"])");
    EXPECT_EQ(list_after([&] { return within(within(side_, list.c_str()), "One more"); }),
              R"(["AM", "LSB", "USB", "CW", "CW 2"])");
    EXPECT_EQ(list_after([&] { return within(row(3), "\xC3\x97"); }), R"(["AM", "LSB", "USB"])");
    // A word alone becomes one that can have a number.
    EXPECT_EQ(list_after([&] { return within(row(1), "+"); }),
              R"(["AM", {"text": "LSB"}, "USB", "CW"])");
}

TEST_F(DrawnSide, AnOptionalMemberGoesAndOneThatIsLeftOutComes) {
    take("coast-listener.json");
    const std::string dial = "/pages/0/items/1";
    const Drawing drawing = [&](SideFrame& side) { draw_members(side, dial); };
    draw(400, drawing);
    press(within(within(side_, (dial + "/separator").c_str()), "\xC3\x97"), drawing);
    ASSERT_EQ(bench_->wanted.size(), 1u);
    EXPECT_EQ(written_at(*bench_->wanted[0].text, dial + "/separator"), std::nullopt);
    bench_->wanted.clear();
    press(within(within(side_, "within_ms"), "within_ms"), drawing);
    ASSERT_EQ(bench_->wanted.size(), 1u);
    EXPECT_EQ(written_at(*bench_->wanted[0].text, dial + "/within_ms"), "5");
}

TEST_F(DrawnSide, DeletingAPaintThatIsUsedSaysAtItWhoUsesIt) {
    take("coast-listener.json");
    const Drawing drawing = [](SideFrame& side) { draw_layout_members(side); };
    draw(400, drawing);
    press(within(within(side_, "/paints/edge"), "\xC3\x97"), drawing);
    EXPECT_TRUE(bench_->wanted.empty());
    ASSERT_TRUE(bench_->refusal.has_value());
    EXPECT_EQ(bench_->refusal->member, "/paints/edge");
    EXPECT_NE(bench_->refusal->words.find("is used by"), std::string::npos);
}

}  // namespace
}  // namespace dialplate
