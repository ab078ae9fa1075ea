// A layout while it is being read, section by section.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/names.hpp"

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

namespace dialplate {

struct Draft {
    explicit Draft(Mistakes& m) : mistakes(m) {}

    Layout layout;
    Mistakes& mistakes;
    Names paints{"paint", "paints"};
    Names looks{"look", "looks"};
    Names faces{"face", "faces"};
    Names values{"value", "values"};
    Names pages{"page", "pages"};
    std::vector<bool> value_is_readable;  ///< By ValueId; false: its type or range is not known.
    std::unordered_map<std::string, Place> item_names;
    /// File, packing, and in tones its paints: each is stored once.
    std::set<std::tuple<std::string, PackingWish, std::vector<PaintId>>> pictures;
};

// Limits of the image (ui/image.md) and of the engine's numbers. Keys have 16-bit numbers there: 4 MiB
// have no room for more than 65,535 of them, at 68 bytes for the shortest.
constexpr int most_named = 255;  // u8 counts of paints, faces, values, looks, pictures
constexpr int most_pages = 64;
constexpr int most_lamp_lines = 32;
constexpr int most_meter_marks = 32;
constexpr int most_characters = 255;  // u8 count of a text's glyphs
constexpr int farthest_pixel = 1023;  // ten bits of a coordinate

// One function for each section; what is wrong is in draft.mistakes afterwards.
void read_display(const Members& document, Draft& draft);
void read_mcu(const Members& document, Draft& draft);
void read_bus(const Members& document, Draft& draft);
void read_taken(const Members& document, Draft& draft);
void read_viewing(const Members& document, Draft& draft);
void read_opening(const Members& document, Draft& draft);
void read_touch(const Members& document, Draft& draft);
void read_wiring(const Members& document, Draft& draft);
void read_region(const Members& document, Draft& draft);
void read_thresholds(const Members& document, Draft& draft);  // with the profile
void read_paints(const Members& document, Draft& draft);      // with palettes
void read_looks(const Members& document, Draft& draft);       // after paints
void read_faces(const Members& document, Draft& draft);
void read_values(const Members& document, Draft& draft);
void read_pages(const Members& document, Draft& draft);    // after all above
void read_waivers(const Members& document, Draft& draft);  // after places are known

/// The least and greatest 32-bit numbers, as a value of the receiver holds them.
[[nodiscard]] Range any_number();

/// A member that gives one state of a value: a choice's text, true or false, a whole number in the
/// value's range. Absent, wrong or unknown gives nullopt, reported unless absent.
std::optional<std::int32_t> state_in(const Members& members,
                                     std::string_view member,
                                     const Value& value);

/// A member that names a value of one of the allowed types. Absent, wrong or unknown gives nullopt,
/// reported unless absent.
std::optional<ValueId> value_ref(const Members& members,
                                 std::string_view member,
                                 const Draft& draft,
                                 std::initializer_list<ValueType> allowed);

/// Ink, fill and edge of an object. Members left out are taken from `otherwise`; without it ink and fill
/// are needed, and edge is ink.
Tones read_tones(const Node& node,
                 const std::string& pointer,
                 Noun noun,
                 const std::optional<Tones>& otherwise,
                 const Draft& draft);

/// "automatic", "plain", "runs" or "context"; automatic when absent.
PackingWish read_packing(const Members& members);

}  // namespace dialplate
