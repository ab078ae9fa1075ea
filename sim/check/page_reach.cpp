// page-reach: somebody can get to every page from the first one, by keys.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource page_reach_sources[] = {
    {"common practice, no source", Trust::practice},
};

std::vector<bool> reachable_pages(const Layout& layout) {
    std::vector<bool> reached(layout.pages.size(), false);
    std::vector<std::size_t> open;
    const auto reach = [&](std::size_t page) {
        if (page >= reached.size() || reached[page]) return;
        reached[page] = true;
        open.push_back(page);
    };
    reach(0);
    while (!open.empty()) {
        const Page& page = layout.pages[open.back()];
        open.pop_back();
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            for (const Action* action : {&item.key.tap, &item.key.hold})
                if (action->kind == ActionKind::page) reach(static_cast<std::size_t>(action->page));
        }
    }
    return reached;
}

void find_page_reach(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const std::vector<bool> reached = reachable_pages(layout);
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (reached[i]) continue;
        add_finding(found,
                    Severity::should,
                    layout.pages[i].pointer,
                    "page \"" + layout.pages[i].name + "\" cannot be reached from page \"" +
                        layout.pages[0].name + "\" by any key: give a key {\"page\": \"" +
                        layout.pages[i].name + "\"}");
    }
}

}  // namespace

const Rule page_reach{
    .name = "page-reach",
    .sentence = "Every page can be reached from the first one by keys.",
    .computed = "The pages that one gets to from the first one by the page actions of keys.",
    .formula = "reachable = first page and all pages that keys of reachable pages turn to",
    .sources = page_reach_sources,
    .figures = {},
    .find = find_page_reach,
};

}  // namespace dialplate::rule
