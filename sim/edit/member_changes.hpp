// Members put in, left out and given another form, together with what that makes necessary beside them.
#pragma once

#include "sim/edit/first_values.hpp"
#include "sim/layout/amend.hpp"

#include <string>
#include <string_view>

namespace dialplate {

/// Puts a member into the object at a place with a first value, with those that it needs, without those that
/// it does not go with.
[[nodiscard]] std::vector<Change> added(const Grounds& grounds,
                                        const std::string& pointer,
                                        const std::string& member);

/// Why a member cannot be put in; empty most of the time.
[[nodiscard]] std::string obstacle_to(const Grounds& grounds,
                                      const std::string& pointer,
                                      const OfferedMember& member);

/// Leaves a member of an object or an element of a list out; what is then needed in its place comes in, and
/// waivers follow.
[[nodiscard]] std::vector<Change> left_out(const Grounds& grounds,
                                           const std::string& pointer,
                                           const std::string& member);

/// An element of a list at another place of it, waivers following.
[[nodiscard]] Amended reordered(std::string_view text,
                                const Node& document,
                                const std::string& list,
                                std::size_t from,
                                std::size_t to);

/// One more element behind the last of the list at a place: like that one, but with words of its own.
[[nodiscard]] std::vector<Change> one_more(const Grounds& grounds,
                                           std::string_view text,
                                           const std::string& pointer);

/// Puts a new paint, look, face, value or page into the document.
/// @param like  Name of one that it shall resemble; may be empty.
[[nodiscard]] std::vector<Change> added_thing(const Grounds& grounds,
                                              std::string_view text,
                                              Shape::Kind kind,
                                              const std::string& like,
                                              const std::string& name);

/// Gives the value at a place another of its forms and keeps what fits.
/// @return The new document, or why not: one sentence.
[[nodiscard]] Amended given_form(const Grounds& grounds,
                                 std::string_view text,
                                 const std::string& pointer,
                                 const Form& form);

}  // namespace dialplate
