// The item kinds, one function each. The members that all items have are read before.
#pragma once

#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"

namespace dialplate {

/// @param ground  The page's ground: what a `ground` left out is.
void read_readout(const Members& members, PaintId ground, Item& item, const Draft& draft);
void read_key(const Members& members, Item& item, const Draft& draft);
void read_legend(const Members& members, PaintId ground, Item& item, const Draft& draft);
void read_lamp(const Members& members, Item& item, const Draft& draft);
void read_meter(const Members& members, PaintId ground, Item& item, const Draft& draft);
void read_scale(const Members& members, PaintId ground, Item& item, const Draft& draft);
void read_picture(const Members& members, PaintId ground, Item& item, Draft& draft);
void read_frame(const Members& members, Item& item, const Draft& draft);

/// Members of an item of that kind.
MemberTable members_of(ItemKind kind);

/// A text of one to three lines on an item.
constexpr TextShape words_on_item{.least = 0, .most = most_characters, .lines = 3};

/// "left", "centre" or "right".
Align read_align(const Members& members, Align otherwise);

/// A corner radius: at most half of the shorter side.
int read_radius(const Members& members, const Box& box);

constexpr int widest_edge = 8;

}  // namespace dialplate
