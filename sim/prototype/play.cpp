#include "sim/prototype/play.hpp"

#include "sim/layout/json_tree.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/source_text.hpp"
#include "sim/layout/suggestion.hpp"
#include "sim/prototype/assignment.hpp"
#include "sim/prototype/prototype.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

constexpr std::int64_t most_detents = 100'000;
constexpr std::int64_t longest_wait_ms = 600'000;
constexpr const char* rule = "play";

struct StepName {
    const char* name;
    StepKind kind;
};
constexpr StepName step_names[] = {
    {"tap", StepKind::tap},
    {"press", StepKind::press},
    {"press_at", StepKind::press_at},
    {"lift", StepKind::lift},
    {"turn", StepKind::turn},
    {"wait_ms", StepKind::wait},
    {"set", StepKind::set},
    {"page", StepKind::page},
    {"palette", StepKind::palette},
};

class Reader {
public:
    Reader(const Layout& layout, std::vector<Finding>& findings)
        : layout_(layout), mistakes_(findings) {}

    std::vector<PlayStep> read(std::string_view text) {
        const std::optional<std::string_view> checked = check_text(text, mistakes_);
        if (!checked) {
            return {};
        }
        const std::optional<Node> root = parse_json(*checked, mistakes_);
        if (root) {
            read_root(*root);
        }
        return std::move(steps_);
    }

    Mistakes& mistakes() { return mistakes_; }

private:
    void wrong(const Node& node, const std::string& pointer, std::string message) {
        wrong(node.place, pointer, std::move(message));
    }
    void wrong(Place place, const std::string& pointer, std::string message) {
        mistakes_.add(
            {.rule = rule, .pointer = pointer, .place = place, .message = std::move(message)});
    }

    void read_root(const Node& root) {
        if (root.kind != Node::Kind::object) {
            wrong(root, "", "a play is an object with \"steps\", found " + describe(root));
            return;
        }
        bool misspelt = false;
        for (const Member& member : root.members) {
            if (member.name != "steps" && member.name != "$schema") {
                unknown(member, "", {"steps"});
                misspelt = true;
            }
        }
        const Node* steps = root.find("steps");
        if (steps == nullptr) {
            if (!misspelt) {  // else it is told once, with the suggestion
                wrong(root, "", "a play needs the member \"steps\"");
            }
            return;
        }
        if (steps->kind != Node::Kind::list) {
            wrong(*steps, "/steps", "\"steps\" is a list of steps, found " + describe(*steps));
            return;
        }
        for (std::size_t i = 0; i < steps->elements.size(); ++i) {
            read_step(steps->elements[i], "/steps" + pointer_part(i));
        }
    }

    void unknown(const Member& member,
                 const std::string& pointer,
                 const std::vector<std::string_view>& known) {
        std::string message = "unknown member " + quote(member.name);
        const std::string_view near =
            mistakes_.may_suggest() ? nearest(member.name, known) : std::string_view{};
        if (!near.empty()) {
            message += ", did you mean " + quote(near) + "?";
        } else {
            message += "; a member here is one of ";
            for (std::size_t i = 0; i < known.size(); ++i) {
                message += (i == 0 ? "" : ", ") + quote(known[i]);
            }
        }
        wrong(member.place, pointer + pointer_part(member.name), std::move(message));
    }

    void read_step(const Node& node, const std::string& pointer) {
        if (node.kind != Node::Kind::object) {
            wrong(node, pointer, "a step is an object, found " + describe(node));
            return;
        }
        if (node.members.size() != 1) {
            wrong(node,
                  pointer,
                  "a step has exactly one member, found " + std::to_string(node.members.size()));
        }
        for (const Member& member : node.members) {
            const auto* known =
                std::find_if(std::begin(step_names), std::end(step_names), [&](const StepName& s) {
                    return member.name == s.name;
                });
            if (known == std::end(step_names)) {
                unknown(member, pointer, names_of_steps());
                continue;
            }
            read_member(known->kind, member.value, pointer + pointer_part(member.name));
        }
    }

    static std::vector<std::string_view> names_of_steps() {
        std::vector<std::string_view> names;
        for (const StepName& step : step_names) {
            names.emplace_back(step.name);
        }
        return names;
    }

    void read_member(StepKind kind, const Node& node, const std::string& pointer) {
        PlayStep step;
        step.kind = kind;
        step.place = node.place;
        bool good = true;
        switch (kind) {
            case StepKind::tap:
            case StepKind::press:
                good = item(node, pointer, step.item);
                break;
            case StepKind::press_at:
                good = pixel(node, pointer, step);
                break;
            case StepKind::lift:
                good = node.kind == Node::Kind::boolean && node.boolean;
                if (!good) {
                    wrong(node, pointer, "\"lift\" is true, found " + describe(node));
                }
                break;
            case StepKind::turn:
                good = whole(node, pointer, "\"turn\"", {-most_detents, most_detents}, step.amount);
                break;
            case StepKind::wait:
                good = whole(node, pointer, "\"wait_ms\"", {0, longest_wait_ms}, step.amount);
                break;
            case StepKind::set:
                settings(node, pointer);
                return;
            case StepKind::page:
                good = name(node, pointer, page_named, step.index);
                break;
            case StepKind::palette:
                good = name(node, pointer, palette_named, step.index);
                break;
        }
        if (good) {
            steps_.push_back(std::move(step));
        }
    }

    bool text(const Node& node, const std::string& pointer) {
        if (node.kind == Node::Kind::text) {
            return true;
        }
        wrong(node, pointer, "a name is a text, found " + describe(node));
        return false;
    }

    bool item(const Node& node, const std::string& pointer, std::string& out) {
        if (!text(node, pointer)) {
            return false;
        }
        const Meant<ItemPlace> meant = item_named(layout_, node.text);
        if (!meant.it) {
            wrong(node, pointer, meant.why);
            return false;
        }
        out = node.text;
        return true;
    }

    bool name(const Node& node,
              const std::string& pointer,
              Meant<int> (*named)(const Layout&, std::string_view),
              int& out) {
        if (!text(node, pointer)) {
            return false;
        }
        const Meant<int> meant = named(layout_, node.text);
        if (!meant.it) {
            wrong(node, pointer, meant.why);
            return false;
        }
        out = *meant.it;
        return true;
    }

    struct Range {
        std::int64_t least, most;
    };
    bool whole(const Node& node,
               const std::string& pointer,
               const std::string& what,
               Range range,
               int& out) {
        if (node.kind == Node::Kind::number && node.integral && node.whole >= range.least &&
            node.whole <= range.most) {
            out = static_cast<int>(node.whole);
            return true;
        }
        wrong(node,
              pointer,
              what + " is a whole number, " + std::to_string(range.least) + " to " +
                  std::to_string(range.most) + ", found " + describe(node));
        return false;
    }

    bool pixel(const Node& node, const std::string& pointer, PlayStep& step) {
        if (node.kind != Node::Kind::list || node.elements.size() != 2) {
            wrong(node,
                  pointer,
                  "\"press_at\" is a list of x and y in pixels, found " + describe(node));
            return false;
        }
        const bool x = whole(node.elements[0],
                             pointer + "/0",
                             "x of \"press_at\"",
                             {0, layout_.glass_width() - 1},
                             step.x);
        const bool y = whole(node.elements[1],
                             pointer + "/1",
                             "y of \"press_at\"",
                             {0, layout_.glass_height() - 1},
                             step.y);
        return x && y;
    }

    void settings(const Node& node, const std::string& pointer) {
        if (node.kind != Node::Kind::object) {
            wrong(node, pointer, "\"set\" is an object of values by name, found " + describe(node));
            return;
        }
        for (const Member& member : node.members) {
            const std::string at = pointer + pointer_part(member.name);
            const Meant<ValueId> value = value_named(layout_, member.name);
            if (!value.it) {
                wrong(member.place, at, value.why);
                continue;
            }
            const Value& known = layout_.values[static_cast<std::size_t>(*value.it)];
            const Meant<std::int32_t> to = setting(known, member.value);
            if (!to.it) {
                wrong(member.value, at, to.why);
                continue;
            }
            PlayStep step;
            step.kind = StepKind::set;
            step.place = member.value.place;
            step.value = *value.it;
            step.to = *to.it;
            steps_.push_back(std::move(step));
        }
    }

    /// As `setting` for words, but a text stays a text: "7100000" is no number.
    static Meant<std::int32_t> setting(const Value& value, const Node& node) {
        switch (value.type) {
            case ValueType::choice:
                if (node.kind == Node::Kind::text) {
                    return dialplate::setting(value, node.text);
                }
                return {std::nullopt,
                        quote(value.name) + " takes the text of a choice, found " + describe(node)};
            case ValueType::flag:
                if (node.kind == Node::Kind::boolean) {
                    return {node.boolean ? 1 : 0, {}};
                }
                return {std::nullopt,
                        quote(value.name) + " takes true or false, found " + describe(node)};
            case ValueType::number:
            case ValueType::level:
                break;
        }
        if (node.kind == Node::Kind::number && node.integral) {
            return dialplate::setting(value, std::to_string(node.whole));
        }
        return {std::nullopt, quote(value.name) + " takes a whole number, found " + describe(node)};
    }

    const Layout& layout_;
    Mistakes mistakes_;
    std::vector<PlayStep> steps_;
};

PlayReading finished(std::vector<PlayStep> steps, std::vector<Finding> findings) {
    sort_by_place(findings);
    PlayReading reading;
    if (findings.empty()) {
        reading.steps = std::move(steps);
    }
    reading.findings = std::move(findings);
    return reading;
}

const Item* item_on_page(const Prototype& prototype, const std::string& name) {
    const Page& page = prototype.layout().pages[static_cast<std::size_t>(prototype.page())];
    const auto found = std::find_if(
        page.items.begin(), page.items.end(), [&](const Item& item) { return item.name == name; });
    return found == page.items.end() ? nullptr : &*found;
}

}  // namespace

PlayReading read_play(std::string_view text, const Layout& layout) {
    std::vector<Finding> findings;
    Reader reader(layout, findings);
    std::vector<PlayStep> steps = reader.read(text);
    return finished(std::move(steps), std::move(findings));
}

PlayReading load_play(const std::string& file, const Layout& layout) {
    std::vector<Finding> findings;
    Reader reader(layout, findings);
    const std::optional<std::string> text = load_text(file, reader.mistakes());
    std::vector<PlayStep> steps;
    if (text) {
        steps = reader.read(*text);
    }
    return finished(std::move(steps), std::move(findings));
}

std::optional<Finding> do_step(Prototype& prototype, const PlayStep& step) {
    switch (step.kind) {
        case StepKind::tap:
        case StepKind::press: {
            const Item* item = item_on_page(prototype, step.item);
            if (item == nullptr) {
                Finding finding;
                finding.rule = rule;
                finding.place = step.place;
                finding.message =
                    "item " + quote(step.item) + " is not on the page shown then, " +
                    quote(
                        prototype.layout().pages[static_cast<std::size_t>(prototype.page())].name);
                return finding;
            }
            const int x = item->box.x + item->box.width / 2;
            const int y = item->box.y + item->box.height / 2;
            if (step.kind == StepKind::tap) {
                prototype.tap(x, y);
            } else {
                prototype.touch(x, y);
            }
            break;
        }
        case StepKind::press_at:
            prototype.touch(step.x, step.y);
            break;
        case StepKind::lift:
            prototype.lift();
            break;
        case StepKind::turn:
            prototype.turn(step.amount);
            break;
        case StepKind::wait:
            prototype.pass(step.amount);
            break;
        case StepKind::set:
            prototype.set(step.value, step.to);
            break;
        case StepKind::page:
            prototype.show_page(step.index);
            break;
        case StepKind::palette:
            prototype.use_palette(step.index);
            break;
    }
    prototype.settle();
    return std::nullopt;
}

std::optional<Finding> perform(Prototype& prototype, const std::vector<PlayStep>& steps) {
    for (const PlayStep& step : steps) {
        if (std::optional<Finding> finding = do_step(prototype, step)) {
            return finding;
        }
    }
    prototype.settle();
    return std::nullopt;
}

}  // namespace dialplate
