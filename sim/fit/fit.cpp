#include "sim/fit/fit.hpp"

#include "sim/check/check.hpp"
#include "sim/fit/options.hpp"
#include "sim/image/build.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "sim/ledger/ledger.hpp"
#include "ui/image_format.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <atomic>
#include <cassert>
#include <cmath>
#include <limits>
#include <map>
#include <queue>
#include <set>
#include <thread>

namespace dialplate {
namespace {

// Ways that are tried at one margin after the best so far.
constexpr int patience = 32;
// Code of an engine differs by so much from the sum of what its decoders take (sim/image/decoder_sizes.hpp).
constexpr std::int64_t engine_slack = 40;

constexpr double infinite = std::numeric_limits<double>::infinity();

// By face, the index of an option.
using Way = std::vector<std::size_t>;

// What the faces decide: a `must` of another rule that the layout breaks anyhow is left aside.
bool decided_by_faces(const Finding& finding) {
    static const std::set<std::string> rules = {
        "character-height", "text-fits", "flash", "image-size"};
    return rules.count(finding.rule) != 0;
}

std::vector<Finding> musts(const Layout& layout, const BuiltImage& built, const Ledger& ledger) {
    std::vector<Finding> found;
    for (Finding& finding : check({layout, built, ledger}))
        if (finding.severity == Severity::must && counts(finding))
            found.push_back(std::move(finding));
    return found;
}

class Search {
public:
    Search(const Layout& layout, const FitWish& wish) : layout_(layout), wish_(wish) {
        const Building building = build_image(layout);
        assert(building.image);
        const Ledger ledger = account(layout, *building.image);
        for (Finding& finding : musts(layout, *building.image, ledger))
            if (!decided_by_faces(finding)) result_.standing.push_back(std::move(finding));
        result_.as_it_is = state_of(layout, *building.image, ledger);

        options_.resize(layout.faces.size());
        in_parallel(layout.faces.size(), [&](std::size_t i) {
            options_[i] = options_for(layout_, static_cast<FaceId>(i), wish_);
        });
        fixed_ = ledger.flash.total.value - engine_slack;
        unsigned packings = 0;
        for (const FaceCost& face : building.image->faces) {
            fixed_ -= face.bytes.value;
            packings |= face.packing == "plain"     ? packing_bit::plain
                        : face.packing == "runs"    ? packing_bit::runs
                        : face.packing == "context" ? packing_bit::context
                                                    : 0U;
        }
        fixed_ -= shared_bytes(packings);
        // A bound must not be too high for ways without a smooth face.
        const bool smooth = std::any_of(
            layout.faces.begin(), layout.faces.end(), [](const Face& f) { return f.smooth; });
        if (smooth) fixed_ -= plain_tones_decoder_bytes + context_tones_decoder_bytes;
    }

    Fit take() {
        if (std::any_of(options_.begin(), options_.end(), [](const auto& o) { return o.empty(); }))
            return finish();
        find_front();
        const auto fits = [&](const Fitting& f) { return f.flash <= wish_.flash; };
        const auto best = std::find_if(front_ways_.rbegin(),
                                       front_ways_.rend(),
                                       [&](const Way& way) { return fits(tried_.at(way)); });
        if (best != front_ways_.rend()) {
            const Way raised = spend_the_rest(*best);
            result_.chosen = tried_.at(smoothed(raised));
        }
        return finish();
    }

private:
    // Decoders, and with `context` its table; at least, as if no face were enlarged.
    [[nodiscard]] std::int64_t shared_bytes(unsigned packings) const {
        const bool decides = sends_contexts(layout_.bus.kind, layout_.display.bytes_per_pixel);
        const std::int64_t decoders = decoders_size(packings, {.decides = decides});
        return (packings & packing_bit::context) != 0 ? decoders + int{context_model::contexts}
                                                      : decoders;
    }

    template <class Work>
    void in_parallel(std::size_t count, Work work) const {
        std::atomic<std::size_t> next{0};
        const auto share = [&] {
            for (std::size_t i = next++; i < count; i = next++)
                work(i);
        };
        const std::size_t cores =
            wish_.threads != 0 ? wish_.threads : std::max(1U, std::thread::hardware_concurrency());
        std::vector<std::thread> others;
        for (std::size_t i = 1; i < std::min(cores, count); ++i)
            others.emplace_back(share);
        share();
        for (std::thread& other : others)
            other.join();
    }

    [[nodiscard]] Fitting state_of(const Layout& layout,
                                   const BuiltImage& built,
                                   const Ledger& ledger) const {
        Fitting fitting;
        fitting.flash = ledger.flash.total;
        for (const FaceChoice& choice : faces_of(layout))
            fitting.faces.push_back({choice, {}, {}, {}});
        for (const FaceCost& cost : built.faces) {
            fitting.faces[static_cast<std::size_t>(cost.face)].packing = cost.packing;
            fitting.faces[static_cast<std::size_t>(cost.face)].bytes = cost.bytes;
        }
        for (const Finding& finding : musts(layout, built, ledger)) {
            const bool stands = std::any_of(
                result_.standing.begin(), result_.standing.end(), [&](const Finding& f) {
                    return f.rule == finding.rule && f.pointer == finding.pointer;
                });
            if (!stands && (decided_by_faces(finding) || !result_.as_it_is.faces.empty()))
                fitting.unmet.push_back(finding);
        }
        return fitting;
    }

    void add_angles(Fitting& fitting, const Way& way) const {
        fitting.margin = infinite;
        for (std::size_t i = 0; i < way.size(); ++i) {
            const FaceOption& option = options_[i][way[i]];
            fitting.faces[i].angle = option.angle;
            if (options_[i].size() > 1 || changes(i))
                fitting.margin = std::min(fitting.margin, option.margin);
        }
    }
    [[nodiscard]] bool changes(std::size_t face) const {
        return layout_.faces[face].latitude.has_value() &&
               std::find(wish_.keep.begin(), wish_.keep.end(), static_cast<FaceId>(face)) ==
                   wish_.keep.end();
    }

    [[nodiscard]] Fitting build(const Way& way) const {
        std::vector<FaceChoice> faces;
        for (std::size_t i = 0; i < way.size(); ++i)
            faces.push_back(options_[i][way[i]].choice);
        const Layout layout = with_faces(layout_, faces, wish_);
        const Building building = build_image(layout);
        Fitting fitting;
        if (!building.image) {
            fitting.faces.resize(way.size());
            fitting.flash = Bytes{std::numeric_limits<std::int64_t>::max()};
            fitting.unmet = building.findings;
        } else {
            fitting = state_of(layout, *building.image, account(layout, *building.image));
        }
        add_angles(fitting, way);
        return fitting;
    }
    void try_all(const std::vector<Way>& ways) {
        std::vector<const Way*> fresh;
        for (const Way& way : ways)
            if (tried_.count(way) == 0) fresh.push_back(&way);
        std::vector<Fitting> built(fresh.size());
        in_parallel(fresh.size(), [&](std::size_t i) { built[i] = build(*fresh[i]); });
        for (std::size_t i = 0; i < fresh.size(); ++i)
            tried_.emplace(*fresh[i], std::move(built[i]));
        if (wish_.progress && !fresh.empty()) wish_.progress(static_cast<int>(tried_.size()));
    }

    // Ways with at least such a margin, by ascending bound of what they take, for each set of decoders.
    class Ascent {
    public:
        Ascent(const Search& search, double margin) {
            for (unsigned set = 0; set < decoder_bytes.size(); ++set) {
                PerSet& mine = sets_.emplace_back();
                mine.base = search.fixed_ + search.shared_bytes(set);
                for (std::size_t i = 0; i < search.options_.size(); ++i) {
                    std::vector<std::size_t>& sorted = mine.sorted.emplace_back();
                    for (std::size_t o = 0; o < search.options_[i].size(); ++o) {
                        const FaceOption& option = search.options_[i][o];
                        const bool wide_enough = option.margin >= margin || !search.changes(i);
                        if (wide_enough && option.least[set]) sorted.push_back(o);
                    }
                    std::stable_sort(
                        sorted.begin(), sorted.end(), [&](std::size_t a, std::size_t b) {
                            return *search.options_[i][a].least[set] <
                                   *search.options_[i][b].least[set];
                        });
                }
                const bool possible = std::none_of(mine.sorted.begin(),
                                                   mine.sorted.end(),
                                                   [](const auto& s) { return s.empty(); });
                if (possible) push(search, set, Way(search.options_.size(), 0));
            }
        }
        struct Next {
            std::int64_t bound;
            Way way;
        };
        std::optional<Next> next(const Search& search) {
            if (queue_.empty()) return std::nullopt;
            const Entry entry = queue_.top();
            queue_.pop();
            for (std::size_t i = 0; i < entry.places.size(); ++i) {
                Way places = entry.places;
                if (++places[i] < sets_[entry.set].sorted[i].size())
                    push(search, entry.set, places);
            }
            return Next{entry.bound, way_of(entry.set, entry.places)};
        }

    private:
        struct PerSet {
            std::int64_t base = 0;
            std::vector<std::vector<std::size_t>> sorted;  // by face: options from the smallest
        };
        struct Entry {
            std::int64_t bound;
            unsigned set;
            Way places;  // in `sorted`
            friend bool operator>(const Entry& a, const Entry& b) { return a.bound > b.bound; }
        };
        [[nodiscard]] Way way_of(unsigned set, const Way& places) const {
            Way way;
            for (std::size_t i = 0; i < places.size(); ++i)
                way.push_back(sets_[set].sorted[i][places[i]]);
            return way;
        }
        void push(const Search& search, unsigned set, const Way& places) {
            if (!seen_.emplace(set, places).second) return;
            std::int64_t bound = sets_[set].base;
            const Way way = way_of(set, places);
            for (std::size_t i = 0; i < way.size(); ++i)
                bound += *search.options_[i][way[i]].least[set];
            queue_.push({bound, set, places});
        }
        std::vector<PerSet> sets_;
        std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue_;
        std::set<std::pair<unsigned, Way>> seen_;
    };

    // The way that takes least among those with at least such a margin; nothing: none keeps every must.
    std::optional<Way> least_at(double margin) {
        Ascent ascent(*this, margin);
        std::optional<Way> best;
        std::set<Way> seen;
        int in_vain = 0;
        while (in_vain < patience) {
            std::vector<Way> batch;
            bool beyond = false;
            while (batch.size() < 4) {
                const std::optional<Ascent::Next> next = ascent.next(*this);
                beyond = !next || (best && next->bound >= tried_.at(*best).flash.value);
                if (beyond) break;
                if (seen.insert(next->way).second) batch.push_back(next->way);
            }
            try_all(batch);
            for (const Way& way : batch) {
                const Fitting& fitting = tried_.at(way);
                const bool better =
                    fitting.unmet.empty() && (!best || fitting.flash < tried_.at(*best).flash ||
                                              (fitting.flash == tried_.at(*best).flash &&
                                               fitting.margin > tried_.at(*best).margin));
                if (better) best = way;
                in_vain = better ? 0 : in_vain + 1;
            }
            if (beyond) break;
        }
        return best;
    }

    // From the smallest margin up: the next is the smallest one greater than that of the way just found, which takes
    // least for all between.
    void find_front() {
        std::set<double> margins;
        for (std::size_t i = 0; i < options_.size(); ++i)
            for (const FaceOption& option : options_[i])
                if (changes(i)) margins.insert(option.margin);
        if (margins.empty()) margins.insert(infinite);
        double reached = -infinite;
        for (const double margin : margins) {
            if (margin <= reached) continue;
            const std::optional<Way> way = least_at(margin);
            if (!way) continue;
            reached = tried_.at(*way).margin;
            // An earlier one that takes no less is no choice.
            while (!front_ways_.empty() &&
                   tried_.at(front_ways_.back()).flash >= tried_.at(*way).flash)
                front_ways_.pop_back();
            front_ways_.push_back(*way);
        }
    }

    // Raises the face with the smallest margin as long as that fits, then the next.
    Way spend_the_rest(Way way) {
        std::set<std::size_t> settled;
        for (;;) {
            std::size_t lowest = way.size();
            for (std::size_t i = 0; i < way.size(); ++i) {
                if (!changes(i) || settled.count(i) != 0) continue;
                if (lowest == way.size() ||
                    options_[i][way[i]].margin < options_[lowest][way[lowest]].margin)
                    lowest = i;
            }
            if (lowest == way.size()) return way;
            const std::vector<FaceOption>& options = options_[lowest];
            const double margin = options[way[lowest]].margin;
            std::vector<Way> higher;
            for (std::size_t o = 0; o < options.size(); ++o) {
                if (options[o].margin <= margin || options[o].margin == infinite) continue;
                higher.push_back(way);
                higher.back()[lowest] = o;
            }
            // The least raise first, so that all faces rise together.
            std::optional<Way> raised;
            for (std::size_t i = 0; i < higher.size() && !raised; ++i) {
                try_all({higher[i]});
                const Fitting& fitting = tried_.at(higher[i]);
                if (fitting.unmet.empty() && fitting.flash <= wish_.flash) raised = higher[i];
            }
            if (raised)
                way = *raised;
            else
                settled.insert(lowest);
        }
    }

    // Faces become smooth as long as that fits, those with the smallest margin first.
    Way smoothed(Way way) {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < way.size(); ++i)
            if (changes(i)) order.push_back(i);
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return options_[a][way[a]].margin < options_[b][way[b]].margin;
        });
        for (const std::size_t face : order) {
            FaceChoice wanted = options_[face][way[face]].choice;
            wanted.smooth = true;
            for (std::size_t o = 0; o < options_[face].size(); ++o) {
                if (options_[face][o].choice != wanted || o == way[face]) continue;
                Way smoother = way;
                smoother[face] = o;
                try_all({smoother});
                const Fitting& fitting = tried_.at(smoother);
                if (fitting.unmet.empty() && fitting.flash <= wish_.flash) way = smoother;
            }
        }
        return way;
    }

    Fit finish() {
        for (const Way& way : front_ways_)
            result_.front.push_back(tried_.at(way));
        result_.tried = static_cast<int>(tried_.size());
        result_.as_it_is.margin = infinite;
        for (std::size_t i = 0; i < options_.size(); ++i) {
            for (const FaceOption& option : options_[i]) {
                if (option.choice != result_.as_it_is.faces[i].choice) continue;
                result_.as_it_is.faces[i].angle = option.angle;
                if (changes(i))
                    result_.as_it_is.margin = std::min(result_.as_it_is.margin, option.margin);
            }
        }
        if (!result_.chosen) {
            // What takes least and keeps every must; else what breaks the fewest.
            if (!result_.front.empty()) {
                result_.nearest = result_.front.front();
            } else {
                for (const auto& [way, fitting] : tried_) {
                    const auto worse = [](const Fitting& f) {
                        return std::pair{f.unmet.size(), f.flash.value};
                    };
                    if (!result_.nearest || worse(fitting) < worse(*result_.nearest))
                        result_.nearest = fitting;
                }
            }
        }
        return std::move(result_);
    }

    const Layout& layout_;
    const FitWish& wish_;
    Fit result_;
    std::vector<std::vector<FaceOption>> options_;  // by FaceId
    std::int64_t fixed_ = 0;
    std::map<Way, Fitting> tried_;
    std::vector<Way> front_ways_;
};

std::string quoted(const std::string& text) {
    return nlohmann::json(text).dump();
}

}  // namespace

Fit fit(const Layout& layout, const FitWish& wish) {
    return Search(layout, wish).take();
}

std::vector<Change> changes_for(const Layout& layout, const Fitting& fitting, const FitWish& wish) {
    std::vector<Change> changes;
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const Face& face = layout.faces[i];
        const FaceChoice& choice = fitting.faces[i].choice;
        if (choice.file != face.file)
            changes.push_back({.pointer = face.pointer + "/file", .value = quoted(choice.file)});
        if (choice.smooth != face.smooth)
            changes.push_back({.kind = layout.places.count(face.pointer + "/smooth") != 0
                                           ? Change::Kind::replace
                                           : Change::Kind::add,
                               .pointer = face.pointer + "/smooth",
                               .value = choice.smooth ? "true" : "false"});
        if (choice.size != face.size)
            changes.push_back(
                {.pointer = face.pointer + "/size", .value = std::to_string(choice.size)});
        const bool kept = std::find(wish.keep.begin(), wish.keep.end(), static_cast<FaceId>(i)) !=
                          wish.keep.end();
        if (!kept && face.kind == FaceKind::raster && face.packing != PackingWish::automatic)
            changes.push_back({.pointer = face.pointer + "/packing", .value = quoted("automatic")});
    }
    return changes;
}

}  // namespace dialplate
