#include "sim/commands/commands.hpp"
#include "sim/commands/cost_json.hpp"
#include "sim/commands/loaded.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/ledger/packing_trade.hpp"
#include "sim/ledger/report.hpp"
#include "sim/ledger/trade_report.hpp"

#include <iostream>
#include <memory>
#include <string>
#include <vector>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

struct CostArguments {
    std::vector<std::string> layouts;
    bool json = false;
    bool packings = false;
};

void cost(const CostArguments& wish, ExitStatus& status) {
    Json results = Json::array();
    bool first = true;
    for (const std::string& file : wish.layouts) {
        const std::optional<Loaded> loaded = load_and_build(file);
        if (!loaded) {
            status.add(ExitStatus::unusable);
            continue;
        }
        const Ledger ledger = account(loaded->layout, loaded->built);
        if (!ledger.flash_fits() || !ledger.ram_fits()) {
            status.add(ExitStatus::findings);
        }
        std::vector<FaceTrade> trades;
        if (wish.packings) trades = packing_trades(loaded->layout, loaded->built);
        if (wish.json) {
            results.push_back(cost_json(loaded->layout, ledger));
            if (wish.packings) results.back()["packings"] = packings_json(loaded->layout, trades);
            continue;
        }
        if (!first) {
            std::cout << '\n';
        }
        first = false;
        std::cout << report_text(loaded->layout, ledger, colour_on(Stream::results));
        if (wish.packings) std::cout << trade_text(loaded->layout, trades);
    }
    if (wish.json && wish.layouts.size() > 1) {
        std::cout << results.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
    } else if (wish.json && !results.empty()) {
        std::cout << results.front().dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
    }
}

}  // namespace

void add_cost(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<CostArguments>();
    CLI::App* command =
        program.add_subcommand("cost", "Account for flash, RAM and time, item by item.");
    command->add_option("LAYOUT", wish->layouts, "Layout files; - is standard input")->required();
    command->add_flag("--packings",
                      wish->packings,
                      "What each packing of each face takes, in flash and in time for a digit");
    command->add_flag("--json", wish->json, "As JSON; several layouts give an array");
    command->footer("Exit status: 0 it fits, 1 it does not fit, 2 unusable input or wrong usage.");
    command->callback([wish, &status] { cost(*wish, status); });
}

}  // namespace dialplate
