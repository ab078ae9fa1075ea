// unused: paints, looks, faces and values that nothing on any page refers to.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <set>

namespace dialplate::rule {

namespace {

constexpr RuleSource unused_sources[] = {
    {"common practice, no source", Trust::practice},
};

/// Everything that some item refers to, by index.
struct References {
    std::set<int> paints, looks, faces, values;
};

void add_tones(References& used, const Tones& tones) {
    used.paints.insert({tones.ink, tones.fill, tones.edge});
}

void add_action(References& used, const Action& action) {
    switch (action.kind) {
        case ActionKind::set:
        case ActionKind::step:
        case ActionKind::toggle:
            used.values.insert(action.value);
            break;
        case ActionKind::none:
        case ActionKind::page:
            break;
    }
}

void add_readout(References& used, const Readout& readout) {
    used.values.insert(readout.value);
    used.faces.insert(readout.face);
    used.paints.insert({readout.ink, readout.ground});
    if (!readout.unit.empty()) {
        used.faces.insert(readout.unit_face);
        used.paints.insert(readout.unit_ink);
    }
    if (readout.tuning) used.values.insert(*readout.tuning);
}

void add_key(References& used, const Key& key) {
    used.looks.insert(key.look);
    if (!key.text.empty()) used.faces.insert(key.face);
    add_action(used, key.tap);
    add_action(used, key.hold);
    if (key.active_value) used.values.insert(*key.active_value);
    if (key.enabled_by) used.values.insert(*key.enabled_by);
}

void add_lamp(References& used, const Lamp& lamp) {
    used.values.insert(lamp.value);
    used.faces.insert(lamp.face);
    add_tones(used, lamp.lit);
    if (lamp.when) add_tones(used, lamp.unlit);
}

void add_meter(References& used, const Meter& meter) {
    used.values.insert(meter.value);
    used.paints.insert({meter.ink, meter.ground, meter.unlit});
    if (meter.over_from <= meter.to) used.paints.insert(meter.over);
    if (meter.peak) used.paints.insert(meter.peak_ink);
    if (meter.marks.empty()) return;
    used.paints.insert(meter.mark_ink);
    used.faces.insert(meter.face);
}

void add_scale(References& used, const Scale& scale) {
    used.values.insert(scale.value);
    used.faces.insert(scale.face);
    used.paints.insert({scale.ink, scale.ground, scale.label_ink, scale.pointer_ink});
}

void add_item(References& used, const Item& item) {
    switch (item.kind) {
        case ItemKind::readout:
            return add_readout(used, item.readout);
        case ItemKind::key:
            return add_key(used, item.key);
        case ItemKind::legend:
            used.faces.insert(item.legend.face);
            used.paints.insert({item.legend.ink, item.legend.ground});
            return;
        case ItemKind::lamp:
            return add_lamp(used, item.lamp);
        case ItemKind::meter:
            return add_meter(used, item.meter);
        case ItemKind::scale:
            return add_scale(used, item.scale);
        case ItemKind::picture:
            used.paints.insert({item.picture.ink, item.picture.ground});
            return;
        case ItemKind::frame:
            if (item.frame.line > 0) used.paints.insert(item.frame.ink);
            if (item.frame.fill) used.paints.insert(*item.frame.fill);
            return;
    }
}

/// Notes the members of a list that no index refers to. One without a pointer was not written by the
/// author and needs no word.
template <class Named>
void note_unused(std::vector<Finding>& found,
                 const std::vector<Named>& all,
                 const std::set<int>& used,
                 const char* word) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].pointer.empty() || used.contains(static_cast<int>(i))) continue;
        add_finding(
            found,
            Severity::note,
            all[i].pointer,
            std::string(word) + " \"" + all[i].name + "\" is used by no item: leave it out");
    }
}

void find_unused(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    References used;
    for (const Page& page : layout.pages) {
        used.paints.insert(page.ground);
        for (const Item& item : page.items)
            add_item(used, item);
    }
    // A look counts as a user of its paints even when no key has it: the look itself is reported.
    for (const Look& look : layout.looks)
        for (const Tones* tones : {&look.idle, &look.pressed, &look.active, &look.disabled})
            add_tones(used, *tones);
    note_unused(found, layout.paints, used.paints, "paint");
    note_unused(found, layout.looks, used.looks, "look");
    note_unused(found, layout.faces, used.faces, "face");
    note_unused(found, layout.values, used.values, "value");
}

}  // namespace

const Rule unused{
    .name = "unused",
    .sentence = "Every paint, look, face and value is used.",
    .computed = "Paints, looks, faces and values that no item refers to.",
    .formula = "references > 0",
    .sources = unused_sources,
    .figures = {},
    .find = find_unused,
};

}  // namespace dialplate::rule
