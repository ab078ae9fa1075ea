// key-action: every key does something, so that the layout is a working prototype.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

void key_action(const Subject& subject, std::vector<Finding>& found) {
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

}  // namespace dialplate::rule
