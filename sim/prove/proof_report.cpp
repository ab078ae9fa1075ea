#include "sim/prove/proof_report.hpp"

#include "sim/emit/text.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cstdio>
#include <fstream>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

std::string said(const std::optional<std::uint8_t>& byte, bool command) {
    if (!byte) return "nothing";
    return (command ? "command " : "data ") + hexadecimal(*byte);
}

std::string difference_text(const FirstDifference& first) {
    return "byte " + std::to_string(first.byte) + " of the bus is " +
           said(first.actual, first.actual_command) + " in place of " +
           said(first.expected, first.expected_command) + " (" + first.place + "), while " +
           first.during;
}

/// Empty: all is well.
std::string failure(const Proof& proof) {
    if (!proof.refusal.empty()) return proof.refusal;
    std::string text;
    const auto add = [&text](const std::string& what) {
        text += (text.empty() ? "" : "; ") + what;
    };
    if (proof.compared.first) add(difference_text(*proof.compared.first));
    if (!proof.compared.trouble.empty()) add(proof.compared.trouble);
    if (proof.bus_faults() != 0) {
        const auto part = [](std::int64_t count, const std::string& name) {
            return count == 0 ? std::string{} : ' ' + std::to_string(count) + ' ' + name;
        };
        add("bus faults:" + part(proof.faults.collisions, "collisions") +
            part(proof.faults.overruns, "overruns") +
            part(proof.faults.edges_while_shifting, "edges while a byte shifts") +
            part(proof.compared.unknown_commands, "unknown commands") +
            part(proof.compared.bad_windows, "bad windows") +
            part(proof.compared.short_windows, "windows not filled") +
            part(proof.compared.stray_bytes, "stray bytes"));
    }
    if (!proof.over_budget.empty()) add("over the budget: " + proof.over_budget);
    return text;
}

Json byte_json(const std::optional<std::uint8_t>& byte) {
    return byte ? Json(*byte) : Json(nullptr);
}

std::uint32_t shown(std::uint16_t colour) {
    return expand_rgb565(colour);
}

}  // namespace

std::string proof_line(const Proof& proof, std::size_t name_width) {
    std::string text = proof.layout;
    text.resize(std::max(text.size(), name_width), ' ');
    if (!proof.refusal.empty()) return text + "  FAILED  " + proof.refusal + '\n';
    const Comparison& compared = proof.compared;
    char figures[240];
    std::snprintf(figures,
                  sizeof figures,
                  "  %-6s  %6lld frames, %lld pixels different; %9lld bus bytes, %lld different; "
                  "%lld faults",
                  proof.ok() ? "ok" : "FAILED",
                  static_cast<long long>(compared.frames),
                  static_cast<long long>(compared.pixels_different),
                  static_cast<long long>(compared.bytes),
                  static_cast<long long>(compared.bytes_different),
                  static_cast<long long>(proof.bus_faults()));
    text += figures;
    if (proof.flash_linked != 0) {
        std::snprintf(figures,
                      sizeof figures,
                      "; flash %5lld of %lld, RAM %4lld of %lld",
                      static_cast<long long>(proof.flash_linked),
                      static_cast<long long>(proof.flash_room),
                      static_cast<long long>(proof.ram_measured),
                      static_cast<long long>(proof.ram_room));
        text += figures;
    }
    return text + '\n';
}

std::string proof_details(const Proof& proof) {
    if (!proof.refusal.empty()) return {};
    std::string text;
    if (const std::string wrong = failure(proof); !wrong.empty()) text = "  " + wrong + '\n';
    const auto against = [](std::int64_t predicted, const char* how, std::int64_t found) {
        return std::to_string(predicted) + " bytes predicted, " + std::to_string(found) + ' ' + how;
    };
    text += "  " + std::to_string(proof.compared.services) + " services, " + proof.toolchain + '\n';
    if (proof.flash_linked != 0) {
        text += "  flash " + against(proof.flash_predicted, "linked", proof.flash_linked) +
                "; RAM " + against(proof.ram_predicted, "measured", proof.ram_measured) + '\n';
    }
    for (const ProvenTime& time : proof.time) {
        text += "  " + time.event + ": ";
        if (time.predicted) {
            char part[32];
            std::snprintf(part,
                          sizeof part,
                          " (%+.1f %%)",
                          100.0 * (static_cast<double>(time.predicted->value) /
                                       static_cast<double>(time.measured.value) -
                                   1.0));
            text += std::to_string(time.predicted->value) + " cycles predicted" + part + ", ";
        }
        text += std::to_string(time.measured.value) + " measured";
        if (time.predicted) {
            char shares[80];
            std::snprintf(shares,
                          sizeof shares,
                          "; %.1f %% of the bus limit predicted, %.1f %% measured",
                          100.0 * time.share_of_limit(*time.predicted),
                          100.0 * time.share_of_limit(time.measured));
            text += shares;
        }
        text += '\n';
    }
    return text;
}

Json proof_json(const Proof& proof) {
    Json time = Json::array();
    for (const ProvenTime& one : proof.time) {
        time.push_back({{"event", one.event},
                        {"predicted", one.predicted ? Json(one.predicted->value) : Json(nullptr)},
                        {"measured", one.measured.value}});
        if (one.predicted) {
            time.back()["predicted_share_of_limit"] = one.share_of_limit(*one.predicted);
            time.back()["measured_share_of_limit"] = one.share_of_limit(one.measured);
        }
    }
    Json json = {{"layout", proof.layout},
                 {"toolchain", proof.toolchain},
                 {"flash", {{"predicted", proof.flash_predicted}, {"linked", proof.flash_linked}}},
                 {"ram", {{"predicted", proof.ram_predicted}, {"measured", proof.ram_measured}}},
                 {"frames", proof.compared.frames},
                 {"pixels_different", proof.compared.pixels_different},
                 {"bus_bytes_different", proof.compared.bytes_different},
                 {"bus_faults", proof.bus_faults()},
                 {"time", time},
                 {"ok", proof.ok()}};
    if (!proof.ok()) json["failure"] = failure(proof);
    if (const auto& first = proof.compared.first) {
        json["first_difference"] = {{"byte", first->byte},
                                    {"expected", byte_json(first->expected)},
                                    {"actual", byte_json(first->actual)},
                                    {"place", first->place},
                                    {"during", first->during}};
    }
    return json;
}

std::vector<std::filesystem::path> write_pictures(const Proof& proof,
                                                  const std::filesystem::path& directory) {
    std::vector<std::filesystem::path> written;
    if (!proof.pictures) return written;
    const Pictures& p = *proof.pictures;
    const auto write = [&](const std::string& name, auto colour_at) {
        const std::filesystem::path path =
            directory / (std::filesystem::path(proof.layout).stem().string() + '-' + name + ".ppm");
        std::string bytes =
            "P6\n" + std::to_string(p.width) + ' ' + std::to_string(p.height) + "\n255\n";
        for (std::size_t i = 0; i < p.expected.size(); ++i) {
            const std::uint32_t colour = colour_at(i);
            for (const int shift : {16, 8, 0}) {
                bytes += static_cast<char>(colour >> shift & 0xFF);
            }
        }
        std::ofstream file(path, std::ios::binary);
        file << bytes;
        file.close();
        if (file) written.push_back(path);
    };
    write("expected", [&](std::size_t i) { return shown(p.expected[i]); });
    write("actual", [&](std::size_t i) { return shown(p.actual[i]); });
    write("difference",
          [&](std::size_t i) { return p.expected[i] == p.actual[i] ? 0U : 0xFFFFFFU; });
    return written;
}

}  // namespace dialplate
