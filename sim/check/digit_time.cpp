// digit-time: a digit of a readout becomes another one within the time that its author asks for.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"
#include "sim/ledger/packing_trade.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace dialplate::rule {

namespace {

constexpr RuleSource digit_time_sources[] = {
    {"the layout's own \"within_ms\"; times as the ledger predicts them", Trust::derived},
};

/// A way to pack the face, and whether that is a smoothed one.
struct Way {
    PackingTrade trade;
    bool smooth = false;
};

std::string words_of(const Way& way) {
    return std::string(way.smooth ? "smoothed in " : "") + way.trade.packing +
           (way.trade.by_what_differs ? ", drawn by what differs" : "");
}

/// The layout with nothing but one readout: built in a fraction of the time, and its digits are much the same.
Layout with_only(const Layout& layout, const Item& item) {
    Layout small = layout;
    Page page = layout.pages.front();
    page.items = {item};
    small.pages = {std::move(page)};
    return small;
}

/// The fastest way to draw the digits of a readout, smoothed or not as it is, and in one bit where it is smoothed.
std::optional<Way> fastest(const Layout& layout, const Item& item) {
    std::optional<Way> best;
    Layout small = with_only(layout, item);
    Face& face = small.faces.at(static_cast<std::size_t>(item.readout.face));
    for (const bool smooth : {true, false}) {
        if (smooth && !face.smooth) continue;
        face.smooth = smooth;
        const Building building = build_image(small);
        if (!building.image) continue;
        for (const PackingTrade& trade :
             packing_trade(small, *building.image, item.readout.face).ways) {
            if (!trade.digit) continue;
            if (best && best->trade.digit->median <= trade.digit->median) continue;
            best = Way{.trade = trade, .smooth = smooth};
        }
    }
    return best;
}

/// Makes a face what the fastest way is; empty where the packing is chosen by time already.
std::vector<Change> changes_to(const Layout& layout, const Face& face, const Way& way) {
    std::vector<Change> changes;
    if (face.smooth && !way.smooth)
        changes.push_back({.pointer = face.pointer + "/smooth", .value = "false"});
    if (face.kind == FaceKind::raster && face.packing != PackingWish::automatic &&
        layout.places.contains(face.pointer + "/packing"))
        changes.push_back({.pointer = face.pointer + "/packing", .value = "\"automatic\""});
    return changes;
}

void judge(const Subject& subject, std::size_t page, std::size_t at, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Item& item = layout.pages[page].items[at];
    const double within = item.readout.within->value;
    const std::optional<DigitChange> digit = digit_change(layout, subject.image, page, at);
    if (!digit || digit->median.value <= within) return;
    const Face& face = layout.faces.at(static_cast<std::size_t>(item.readout.face));
    const std::optional<Way> way = fastest(layout, item);
    std::string cure = ": ";
    std::vector<Change> changes;
    if (way && way->trade.digit->median.value <= within) {
        cure += words_of(*way) + " takes " + number(way->trade.digit->median.value, 1) + " ms";
        changes = changes_to(layout, face, *way);
    } else {
        const double least = way ? way->trade.digit->median.value : digit->median.value;
        cure += "no packing is so fast" +
                (way ? ", the fastest, " + words_of(*way) + ", takes " + number(least, 1) + " ms"
                     : std::string()) +
                "; some " + number(std::ceil(100.0 * (1.0 - within / least))) +
                " % fewer pixels or a faster bus would reach it";
    }
    add_finding(found,
                Severity::should,
                item.pointer,
                {digit->median.value, within, "ms"},
                called(item) + " in " + (face.smooth ? "smoothed " : "") + called(face) +
                    " takes " + number(digit->median.value, 1) +
                    " ms until a digit has become another one (half of all pairs less), " +
                    "asked for are " + number(within, 1) + " ms" + cure);
    found.back().cure = std::move(changes);
}

void find_digit_time(const Subject& subject, std::vector<Finding>& found) {
    for (std::size_t page = 0; page < subject.layout.pages.size(); ++page) {
        const std::vector<Item>& items = subject.layout.pages[page].items;
        for (std::size_t item = 0; item < items.size(); ++item)
            if (items[item].kind == ItemKind::readout && items[item].readout.within)
                judge(subject, page, item, found);
    }
}

}  // namespace

const Rule digit_time{
    .name = "digit-time",
    .sentence =
        "A digit of a readout becomes another one within the time that its author asks for.",
    .computed =
        "Every digit that the last place of a readout with \"within_ms\" can show is drawn after "
        "every other one; the time that half of these changes take at most, bus and decoding, as "
        "the ledger predicts it. Where that is too long, all packings of the face are tried, and "
        "one bit in place of a smoothed face.",
    .formula = "median over the pairs of digits of cycles / clock <= within_ms",
    .sources = digit_time_sources,
    .figures = {},
    .find = find_digit_time,
};

}  // namespace dialplate::rule
