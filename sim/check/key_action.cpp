// key-action: every key does something, so that the layout is a working prototype.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource key_action_sources[] = {
    {"common practice, no source", Trust::practice},
};

void find_key_action(const Subject& subject, std::vector<Finding>& found) {
    for (const Page& page : subject.layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            if (item.key.tap.kind != ActionKind::none || item.key.hold.kind != ActionKind::none)
                continue;
            add_finding(found,
                        Severity::should,
                        item.pointer,
                        called(item) +
                            " has neither a tap nor a hold action: give it one, or make it a "
                            "legend");
        }
    }
}

}  // namespace

const Rule key_action{
    .name = "key-action",
    .sentence = "Every key does something.",
    .computed = "Whether a key has an action for a tap or for a hold.",
    .formula = "tap or hold",
    .sources = key_action_sources,
    .figures = {},
    .find = find_key_action,
};

}  // namespace dialplate::rule
