#include "sim/edit/member_changes.hpp"

#include "sim/edit/naming.hpp"
#include "tests/edit/example.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

const char* const examples[] = {
    "coast-listener.json", "bench-standard.json", "trail-cw.json", "pocket-broadcast.json"};

/// Every object of a document by its place.
std::vector<std::string> objects_of(const Node& document) {
    std::vector<std::string> places;
    layout_schema().visit(document,
                          [&](const std::string& pointer, const Shape&, const Node& value) {
                              if (value.kind == Node::Kind::object) places.push_back(pointer);
                          });
    return places;
}

std::string place_without_numbers(const std::string& pointer) {
    std::string name;
    for (const char c : pointer)
        if (c < '0' || c > '9') name += c;
    return name;
}

TEST(MemberChanges, WhateverIsLeftOutOfTheExamplesCanBePutInAndReads) {
    std::map<std::string, std::string> refused;
    std::set<std::string> known;  // one of a kind is enough: a page has twenty keys
    for (const char* example : examples) {
        const std::string text = layouts_text(example);
        const Node document = tree(text);
        const Reading reading = read_layout(text, example, layouts_folder);
        const Grounds grounds{layout_schema(), document, &*reading.layout};
        for (const std::string& place : objects_of(document))
            for (const OfferedMember& member : layout_schema().members(document, place)) {
                if (member.present != nullptr || !obstacle_to(grounds, place, member).empty())
                    continue;
                const Node* object = node_at(document, place);
                const Node* kind = object->find("kind");
                if (!known
                         .insert(example + place_without_numbers(place) +
                                 (kind == nullptr ? "" : kind->text) + " " + member.name)
                         .second)
                    continue;
                const Amended result = amend(text, added(grounds, place, member.name));
                ASSERT_EQ(result.mistake, "") << place << " " << member.name;
                if (const std::string mistake = mistake_in(*result.text); !mistake.empty())
                    refused[place_without_numbers(place) + "/" + member.name] = mistake;
            }
    }
    EXPECT_GT(known.size(), 200u);
    // What no first value can help.
    const std::map<std::string, std::string> expected = {
        {"/faces/dial/smooth", "the packing runs has no tones"},
        {"/values/beat note/role", "a level plays the signal or the clock; the signal is taken"}};
    for (const auto& [place, mistake] : refused)
        if (expected.count(place) == 0) ADD_FAILURE() << place << ": " << mistake;
    for (const auto& [place, why] : expected)
        EXPECT_EQ(refused.count(place), 1u) << place << " reads now; it was: " << why;
}

TEST(MemberChanges, AnActionBecomesAnotherAndKeepsWhatFits) {
    const std::string text = layouts_text("coast-listener.json");
    const Node document = tree(text);
    std::string key;
    layout_schema().visit(
        document, [&](const std::string& pointer, const Shape&, const Node& node) {
            if (key.empty() && pointer.ends_with("/tap") && node.find("set") != nullptr)
                key = pointer;
        });
    ASSERT_NE(key, "");
    const std::string value = node_at(document, key)->find("set")->text;
    const std::vector<Form> forms = layout_schema().forms(document, key);
    ASSERT_EQ(forms.size(), 4u);
    const auto to = [&](const char* name) {
        const auto form =
            std::find_if(forms.begin(), forms.end(), [&](auto& one) { return one.name == name; });
        return given_form({layout_schema(), document}, text, key, *form);
    };
    EXPECT_TRUE(forms[0].present);
    EXPECT_EQ(to("set").text, text);
    const Amended step = to("step");
    ASSERT_EQ(step.mistake, "");
    EXPECT_EQ(written_at(*step.text, key), "{\"step\": \"" + value + "\"}");
    EXPECT_EQ(mistake_in(*step.text), "");
    const Amended page = to("page");
    ASSERT_EQ(page.mistake, "");
    EXPECT_EQ(written_at(*page.text, key), R"({"page": "main"})");
    EXPECT_EQ(mistake_in(*page.text), "");
    EXPECT_EQ(to("toggle").mistake, "the layout has no value that will do for \"toggle\"");
}

TEST(MemberChanges, AnItemBecomesOneOfAnotherKindAndKeepsPlaceAndFace) {
    const std::string text = layouts_text("coast-listener.json");
    const Node document = tree(text);
    const Grounds grounds{layout_schema(), document};
    const Node* items = node_at(document, "/pages/0/items");
    ASSERT_NE(items, nullptr);
    std::set<std::string> known;
    for (std::size_t i = 0; i < items->elements.size(); ++i) {
        if (!known.insert(items->elements[i].find("kind")->text).second) continue;
        const std::string place = "/pages/0/items/" + std::to_string(i);
        for (const Form& form : layout_schema().forms(document, place)) {
            if (form.name == "picture") continue;  // needs a file
            SCOPED_TRACE(place + " becomes " + form.name);
            const Amended result = given_form(grounds, text, place, form);
            ASSERT_EQ(result.mistake, "");
            EXPECT_EQ(written_at(*result.text, place + "/at"), written_at(text, place + "/at"));
            EXPECT_EQ(written_at(*result.text, place + "/kind"), "\"" + form.name + "\"");
            EXPECT_EQ(mistake_in(*result.text), "");
        }
    }
}

TEST(MemberChanges, AValueGetsAnotherType) {
    const std::string text =
        R"({"values": {"a": {"type": "number", "unit": "Hz", "role": "frequency", "min": 1, "max": 9, "start": 3}}})";
    const Node document = tree(text);
    const auto become = [&](const std::string& type) {
        for (const Form& form : layout_schema().forms(document, "/values/a"))
            if (form.name == type)
                return given_form({layout_schema(), document}, text, "/values/a", form)
                    .text.value_or("");
        return std::string{};
    };
    // A level cannot play the frequency; a choice has no range.
    EXPECT_EQ(
        become("level"),
        R"({"values": {"a": {"type": "level", "unit": "Hz", "min": 1, "max": 9, "start": 3}}})");
    EXPECT_EQ(become("choice"),
              R"({"values": {"a": {"type": "choice", "unit": "Hz", "choices": ["one", "two"]}}})");
    EXPECT_EQ(become("flag"), R"({"values": {"a": {"type": "flag"}}})");
}

TEST(MemberChanges, AStateMayBeAWordAloneOrWrittenOut) {
    const std::string text =
        R"({"values": {"m": {"type": "choice", "choices": ["AM", {"text": "USB", "number": 2}]}}})";
    const Node document = tree(text);
    const auto other_form = [&](const std::string& place) {
        for (const Form& form : layout_schema().forms(document, place))
            if (!form.present)
                return given_form({layout_schema(), document}, text, place, form).text.value_or("");
        return std::string{};
    };
    EXPECT_EQ(
        other_form("/values/m/choices/0"),
        R"({"values": {"m": {"type": "choice", "choices": [{"text": "AM"}, {"text": "USB", "number": 2}]}}})");
    EXPECT_EQ(other_form("/values/m/choices/1"),
              R"({"values": {"m": {"type": "choice", "choices": ["AM", "USB"]}}})");
}

TEST(MemberChanges, OneMoreIsLikeTheLastWithWordsOfItsOwn) {
    const std::string text =
        R"({"values": {"m": {"type": "choice", "choices": ["one", {"text": "one 2", "number": 2}]}}})";
    const Amended result =
        amend(text, one_more({layout_schema(), tree(text)}, text, "/values/m/choices"));
    EXPECT_EQ(
        result.text,
        R"({"values": {"m": {"type": "choice", "choices": ["one", {"text": "one 2", "number": 2}, {"text": "one 3", "number": 2}]}}})");
    const std::string meter =
        R"({"pages": [{"items": [{"kind": "meter", "marks": [{"at": 3, "text": "S1"}]}]}]})";
    EXPECT_EQ(
        amend(meter, one_more({layout_schema(), tree(meter)}, meter, "/pages/0/items/0/marks"))
            .text,
        R"({"pages": [{"items": [{"kind": "meter", "marks": [{"at": 3, "text": "S1"}, )"
        R"({"at": 3, "text": "S1"}]}]}]})");
}

TEST(MemberChanges, TonesOfAPictureTakeThePlaceOfInkAndGroundAndGiveItBack) {
    const std::string text = R"({"paints": {"a": "#000000", "b": "#FFFFFF"}, "pages": [{"items": [)"
                             R"({"kind": "picture", "ink": "b", "ground": "a"}]}]})";
    const std::string place = "/pages/0/items/0";
    const Node document = tree(text);
    const Amended with = amend(text, added({layout_schema(), document}, place, "tones"));
    ASSERT_EQ(with.mistake, "");
    EXPECT_EQ(written_at(*with.text, place),
              R"({"kind": "picture", "tones": ["a", "a", "a", "a"]})");
    const Node there = tree(*with.text);
    bool offered = false;
    for (const OfferedMember& member : layout_schema().members(there, place))
        if (member.name == "ground") {
            offered = true;
            EXPECT_NE(obstacle_to({layout_schema(), there}, place, member), "");
        }
    EXPECT_TRUE(offered);
    const Amended back = amend(*with.text, left_out({layout_schema(), there}, place, "tones"));
    EXPECT_EQ(written_at(back.text.value_or(""), place), R"({"kind": "picture", "ink": "a"})");
}

TEST(MemberChanges, NewThingsReadInEveryExample) {
    for (const char* example : examples) {
        const std::string text = layouts_text(example);
        const Node document = tree(text);
        const Grounds grounds{layout_schema(), document};
        for (const Kind kind : {Kind::paint, Kind::look, Kind::face, Kind::value, Kind::page}) {
            SCOPED_TRACE(std::string(example) + " " + noun_of(kind));
            const std::string name = free_name(document, kind, "new");
            const Amended result = amend(text, added_thing(grounds, text, kind, "", name));
            ASSERT_EQ(result.mistake, "");
            EXPECT_EQ(mistake_in(*result.text), "");
        }
    }
}

TEST(MemberChanges, APaintLikeAnotherIsLikeItInEveryPalette) {
    const std::string text = layouts_text("coast-listener.json");
    const Node document = tree(text);
    const Amended result =
        amend(text, added_thing({layout_schema(), document}, text, Kind::paint, "ink", "ink 2"));
    ASSERT_EQ(result.mistake, "");
    for (const std::string place : {"/paints/", "/palettes/sunlight/", "/palettes/night watch/"}) {
        const auto paint = written_at(*result.text, place + "ink 2");
        ASSERT_TRUE(paint) << place;
        EXPECT_EQ(paint, written_at(text, place + "ink")) << place;
    }
}

}  // namespace
}  // namespace dialplate
