#include "sim/check/paint_cures.hpp"

#include "sim/check/contrast.hpp"
#include "sim/check/nearest_ink.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/two_states.hpp"
#include "sim/check/wording.hpp"
#include "sim/colour/colour_space.hpp"
#include "sim/layout/json_tree.hpp"

#include <algorithm>

namespace dialplate {

namespace {

std::size_t palettes_of(const Layout& layout) {
    return std::max<std::size_t>(1, layout.palettes.size());
}

double difference(std::uint16_t one, std::uint16_t other) {
    return ciede2000(lab(light_of(expand_rgb565(one))), lab(light_of(expand_rgb565(other))));
}

std::string pointer_in(const Layout& layout, PaintId paint, std::size_t palette) {
    const std::string name = pointer_part(layout.paints.at(static_cast<std::size_t>(paint)).name);
    return palette == 0 ? "/paints" + name
                        : "/palettes" + pointer_part(layout.palettes.at(palette)) + name;
}

}  // namespace

PaintCures::PaintCures(const Layout& layout) : layout_(layout) {
    const auto meet = [&](PaintId one, PaintId other) {
        meetings_.push_back({.one = one, .other = other});
    };
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            for (const ShownText& text : texts_of(item, layout))
                meet(text.ink, text.ground);
            for (const ShownMark& mark : marks_of(item))
                meet(mark.ink, mark.ground);
            if (const auto states = states_of(item, layout)) {
                meet(states->on.fill, states->off.fill);
                meet(states->on.ink, states->off.ink);
                meet(states->on.edge, states->off.edge);
            }
            const PaintId behind = backdrop_of(item, page);
            if (item.kind == ItemKind::key) {
                const Look& look = layout.looks.at(static_cast<std::size_t>(item.key.look));
                for (const Tones& tones : {look.idle, look.active, look.pressed}) {
                    meet(tones.fill, behind);
                    meet(tones.edge, behind);
                }
            } else if (item.kind == ItemKind::frame) {
                meet(item.frame.ink, behind);
                if (item.frame.fill) meet(*item.frame.fill, behind);
            } else if (item.kind == ItemKind::readout) {
                meet(item.readout.ground, behind);
            }
        }
    }
    std::sort(meetings_.begin(), meetings_.end());
    meetings_.erase(std::unique(meetings_.begin(), meetings_.end()), meetings_.end());
}

bool PaintCures::inherits(PaintId paint, std::size_t palette) const {
    return palette > 0 && !layout_.places.contains(pointer_in(layout_, paint, palette));
}

bool PaintCures::nobody_loses(const FaintPaint& faint) const {
    const std::uint16_t colour = pack_rgb565(*faint.colour);
    for (std::size_t palette = 0; palette < palettes_of(layout_); ++palette) {
        const bool changed =
            palette == faint.palette || (faint.palette == 0 && inherits(faint.paint, palette));
        if (!changed) continue;
        for (const Meeting& meeting : meetings_) {
            if (meeting.one == meeting.other) continue;
            if (meeting.one != faint.paint && meeting.other != faint.paint) continue;
            const PaintId other = meeting.one == faint.paint ? meeting.other : meeting.one;
            const std::uint16_t beside = colour_in(layout_, other, palette);
            const double before =
                contrast_on_glass(colour_in(layout_, faint.paint, palette), beside);
            // What meets the same colour has nothing to lose: it is not meant to be told apart.
            if (before > 1.0 + slack && contrast_on_glass(colour, beside) < before - slack)
                return false;
        }
    }
    return true;
}

std::optional<std::string> PaintCures::other_paint(const FaintPaint& faint) const {
    const Paint* best = nullptr;
    double least_difference = 0, ratio_of_best = 0;
    const std::uint16_t own = colour_in(layout_, faint.paint, faint.palette);
    for (std::size_t i = 0; i < layout_.paints.size(); ++i) {
        const auto paint = static_cast<PaintId>(i);
        double least = 1e9;
        for (std::size_t palette = 0; palette < palettes_of(layout_); ++palette)
            least = std::min(least,
                             faint.ratio(colour_in(layout_, paint, palette),
                                         colour_in(layout_, faint.against, palette)));
        if (least < faint.needed) continue;
        const double apart = difference(own, colour_in(layout_, paint, faint.palette));
        if (best != nullptr && apart >= least_difference) continue;
        best = &layout_.paints[i];
        least_difference = apart;
        ratio_of_best = least;
    }
    if (best == nullptr) return std::nullopt;
    return "paint \"" + best->name + "\" has " + number(ratio_of_best, faint.decimals) + ":1" +
           (palettes_of(layout_) > 1 ? " or more in every palette" : "");
}

PaintCure PaintCures::cure(const FaintPaint& faint) const {
    const std::string part = faint.part;
    const std::optional<std::string> other = other_paint(faint);
    if (!faint.colour) {
        if (!other) return {.words = ": no " + part + " reaches it on this ground", .changes = {}};
        return {.words = ": " + *other, .changes = {}};
    }
    const std::string name = layout_.paints.at(static_cast<std::size_t>(faint.paint)).name;
    const std::string reaches = ": " + part + " " + hex_colour(*faint.colour) + " reaches it";
    if (!nobody_loses(faint)) {
        return {.words = reaches + ", but paint \"" + name +
                         "\" is used elsewhere too, where it would stand out less" +
                         (other ? "; " + *other : ""),
                .changes = {}};
    }
    const std::string pointer = pointer_in(layout_, faint.paint, faint.palette);
    const bool there = layout_.places.contains(pointer) || faint.palette == 0;
    return {.words = reaches,
            .changes = {{.kind = there ? Change::Kind::replace : Change::Kind::add,
                         .pointer = pointer,
                         .value = '"' + hex_colour(*faint.colour) + '"'}}};
}

PaintCure PaintCures::cure_of_contrast(
    const char* part, PaintId paint, PaintId against, std::size_t palette, double needed) const {
    return cure({.part = part,
                 .paint = paint,
                 .against = against,
                 .palette = palette,
                 .colour = ink_that_reaches({.ink = colour_in(layout_, paint, palette),
                                             .ground = colour_in(layout_, against, palette),
                                             .ratio = needed}),
                 .needed = needed,
                 .ratio = contrast_on_glass});
}

}  // namespace dialplate
