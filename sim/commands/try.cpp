#include "sim/commands/commands.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/desk/desk.hpp"
#include "sim/layout/reader.hpp"

#include <memory>
#include <string>

namespace dialplate {
namespace {

constexpr const char* first_example = "coast-listener.json";

struct TryArguments {
    std::string layout;
    WindowWish window;
    bool still = false;
};

void open(const TryArguments& wish, ExitStatus& status) {
    std::string layout = wish.layout;
    if (layout.empty()) {
        layout = find_file(".", first_example);
        if (layout.empty()) {
            complain("no layout is named, and the example " + std::string{first_example} +
                     " is not where this program was built");
            status.add(ExitStatus::unusable);
            return;
        }
    }
    WindowWish window = wish.window;
    window.live = !wish.still;
    status.add(open_window(layout, window));
}

}  // namespace

void add_try(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<TryArguments>();
    CLI::App* command = program.add_subcommand(
        "try", "Open the window on a layout (also what happens without a command).");
    command->add_option("LAYOUT", wish->layout, "Layout file; absent: the first example");
    command->add_option("--zoom", wish->window.zoom, "Screen pixels a glass pixel")
        ->check(CLI::Range(1, 16));
    command->add_flag("--still", wish->still, "The signal does not fade and clocks stand");
    command->callback([wish, &status] { open(*wish, status); });
}

}  // namespace dialplate
