// band-edges: a band named "40 m" lies where that band is in the layout's Region.
//
// Edges shown are no permission to transmit: national law is narrower in places.
#include "sim/check/dial.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"
#include "sim/receiver/bands.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace dialplate::rule {

namespace {

constexpr RuleSource band_edges_sources[] = {
    {"IARU band plans and ITU RR Art. 5 for the Region, amateur bands (section 8 of the figures)",
     Trust::read},
    {"public tables of broadcast bands after WRC-97 and ITU RR 5.134", Trust::read},
};

/// What is on the air under a name.
struct Named {
    BandEdges edges;
    bool amateur = true;
    const char* note = "";
};

/// "40 m" and "40m" are the same; "40 m CW" is something else, of which nothing is known.
bool same_name(std::string_view text, std::string_view name) {
    std::string joined;
    for (const char c : text)
        if (c != ' ') joined += c;
    std::string plain;
    for (const char c : name)
        if (c != ' ') plain += c;
    return joined == plain;
}

bool meet(const BandEdges& a, const BandEdges& b) {
    return a.low <= b.high && b.low <= a.high;
}

/// The band of that name; of an amateur and a broadcast band with one name the one that meets the edges.
std::optional<Named> band_named(std::string_view text, Region region, const BandEdges& written) {
    std::optional<Named> found;
    for (const AmateurBand& band : amateur_bands())
        if (same_name(text, band.name)) found = Named{band.edges(region), true, band.note};
    if (found && meet(found->edges, written)) return found;
    for (const BroadcastBand& band : broadcast_bands())
        if (same_name(text, band.name) && (!found || meet(band.edges, written)))
            found = Named{band.edges, false, band.note};
    return found;
}

Region region_of(const Layout& layout) {
    return layout.region == 2 ? Region::two : layout.region == 3 ? Region::three : Region::one;
}

/// One edge of a band as the layout has it, and as it is; in the dial's unit.
struct Edge {
    const char* name;
    double written, actual;
    bool outside;
};

void judge_edge(const Choice& choice,
                const Named& band,
                const Edge& edge,
                const Layout& layout,
                std::vector<Finding>& found) {
    if (!edge.outside) return;
    const std::string unit = value_with(layout, Role::frequency)->unit;
    add_finding(found,
                Severity::should,
                choice.pointer + "/" + edge.name,
                {edge.written, edge.actual, unit.c_str()},
                "band \"" + choice.text + "\" has its " + edge.name + " edge at " +
                    number(edge.written) + " " + unit + ", outside the " +
                    (band.amateur ? "amateur" : "broadcast") + " band" +
                    (band.amateur ? " in Region " + std::to_string(layout.region) : std::string()) +
                    ", which " + (edge.name == std::string_view("low") ? "begins" : "ends") +
                    " at " + number(edge.actual) + " " + unit +
                    (*band.note != '\0' ? " (" + std::string(band.note) + ")" : std::string()),
                band.amateur ? nullptr : band_edges_sources[1].text);
    const double number_there = choice.number.value_or(0);
    const bool keeps_number =
        !choice.number || (edge.name == std::string_view("low") ? number_there >= edge.actual
                                                                : number_there <= edge.actual);
    // A cure that would leave the band's first frequency outside is none.
    if (keeps_number)
        found.back().cure = {{.kind = dialplate::Change::Kind::replace,
                              .pointer = choice.pointer + "/" + edge.name,
                              .value = number(edge.actual)}};
}

void find_band_edges(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Value* const bands = value_with(layout, Role::band);
    const auto unit = hertz_a_unit(layout);
    if (bands == nullptr || !unit) return;
    constexpr std::int64_t highest = 2000000000;  // hertz, beyond all bands and in 32 bits
    for (const Choice& choice : bands->choices) {
        if (!choice.low || !choice.high || *choice.high * *unit > highest || *choice.low < 0)
            continue;
        const BandEdges written{static_cast<std::int32_t>(*choice.low * *unit),
                                static_cast<std::int32_t>(*choice.high * *unit)};
        const auto band = band_named(choice.text, region_of(layout), written);
        if (!band) continue;
        const auto in_unit = [&](std::int32_t hertz) {
            return static_cast<double>(hertz) / static_cast<double>(*unit);
        };
        if (!meet(band->edges, written)) {
            add_finding(found,
                        Severity::should,
                        choice.pointer,
                        "band \"" + choice.text + "\" lies at " + number(*choice.low) + " to " +
                            number(*choice.high) + " " + value_with(layout, Role::frequency)->unit +
                            ", the band of that name at " + number(in_unit(band->edges.low)) +
                            " to " + number(in_unit(band->edges.high)));
            continue;
        }
        judge_edge(choice,
                   *band,
                   {.name = "low",
                    .written = static_cast<double>(*choice.low),
                    .actual = in_unit(band->edges.low),
                    .outside = written.low < band->edges.low},
                   layout,
                   found);
        judge_edge(choice,
                   *band,
                   {.name = "high",
                    .written = static_cast<double>(*choice.high),
                    .actual = in_unit(band->edges.high),
                    .outside = written.high > band->edges.high},
                   layout,
                   found);
    }
}

}  // namespace

const Rule band_edges{
    .name = "band-edges",
    .sentence = "A band named after its wavelength lies within that band in the layout's Region.",
    .computed =
        "Edges of every choice of the value with the role band whose words are those of an amateur "
        "or a broadcast "
        "band (\"40 m\"), against the edges of that band in the ITU Region of the layout. Narrower "
        "ones are fine. "
        "Edges shown are no permission to transmit.",
    .formula = "low >= low edge and high <= high edge",
    .sources = band_edges_sources,
    .figures = {},
    .find = find_band_edges,
};

}  // namespace dialplate::rule
