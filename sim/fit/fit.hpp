// Fitting the faces of a layout to a flash budget: of the fonts and sizes that the author allows, those that can be
// read best.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What a face becomes.
struct FaceChoice {
    std::string file;
    int size = 0;
    bool smooth = false;

    friend bool operator==(const FaceChoice&, const FaceChoice&) = default;
};

/// One way to have all faces, built and accounted for.
struct Fitting {
    struct FaceState {
        FaceChoice choice;
        std::string packing;
        Bytes bytes;
        std::optional<ArcMinutes> angle;  ///< Of its capitals or digits; absent: none are shown.
    };
    std::vector<FaceState> faces;  ///< By FaceId.
    Bytes flash;                   ///< Of the whole display: engine, driver and image.
    /// Smallest of angle to angle required among the faces that may change and are shown; with none, infinite.
    double margin = 0;
    std::vector<Finding>
        unmet;  ///< Findings of severity `must` that come with it; a fitting that is offered has none.
};

struct FitWish {
    Bytes flash;                 ///< That the whole display may take.
    std::vector<FaceId> keep{};  ///< These stay just as they are, packing included.
    unsigned threads = 0;        ///< 0: one for each core.
    /// Told now and then how many ways were tried; called from one thread at a time.
    std::function<void(int tried)> progress{};
};

struct Fit {
    Fitting as_it_is;
    std::optional<Fitting> chosen;  ///< Absent: nothing within the budget keeps every `must`.
    /// Ways that take the least for their margin, by bytes; each more has a greater margin.
    std::vector<Fitting> front;
    std::optional<Fitting> nearest;  ///< Without a chosen one: what comes nearest.
    std::vector<Finding> standing;   ///< Of severity `must`, whatever the faces are; left aside.
    int tried = 0;
};

/// Searches the faces for which Face::latitude is set; packings are chosen anew for all but the kept ones. Keeps
/// every `must` that the layout keeps or that faces decide. Maximises the margin; what the budget then leaves goes
/// to the face with the next smallest margin, and so on; and what is left then makes faces smooth that may be, those
/// with the smallest margin first.
///
/// For each margin the ways are tried from the one that takes least by a bound, which is the size of each face in its
/// best packing, in `context` with a table of its own; up to `patience` ways that are no better end the search. So
/// small spaces are searched whole, and in larger ones a way can be missed that takes some bytes less.
/// @pre The layout builds without errors.
Fit fit(const Layout& layout, const FitWish& wish);

/// The angle that every text has to subtend: the least figure of the rule character-height.
ArcMinutes required_angle(const Layout& layout);

/// The changes to the document that turn `layout` into a fitting of it, in order.
std::vector<Change> changes_for(const Layout& layout, const Fitting& fitting, const FitWish& wish);

}  // namespace dialplate
