// The commands of the program, one file each. Every one adds itself to the command line, and sets the
// exit status when it has run: 0 fine, 1 findings of severity `must`, 2 unusable input or wrong usage.
// Results go to standard output, errors to standard error.
#pragma once

#include <CLI/CLI.hpp>

namespace dialplate {

/// Exit status of the program.
struct ExitStatus {
    static constexpr int fine = 0;
    static constexpr int findings = 1;
    static constexpr int unusable = 2;
    int code = fine;

    /// The worse of what was and what is new.
    void add(int other) { code = other > code ? other : code; }
};

// `status` must outlive run(), which runs the command that was asked for.
void add_try(CLI::App& program, ExitStatus& status);
void add_check(CLI::App& program, ExitStatus& status);
void add_cost(CLI::App& program, ExitStatus& status);
void add_faces(CLI::App& program, ExitStatus& status);
void add_fit(CLI::App& program, ExitStatus& status);
void add_shot(CLI::App& program, ExitStatus& status);
void add_emit(CLI::App& program, ExitStatus& status);
void add_prove(CLI::App& program, ExitStatus& status);

/// Reads the command line and runs the command in it. Without a command, or with a layout in its
/// place, the command is `try`.
/// @return The exit status of the program.
int run(CLI::App& program, int argc, char** argv, ExitStatus& status);

}  // namespace dialplate
