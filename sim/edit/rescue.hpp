// What a crash or a cut of power must not take: the unsaved text of a layout, in a file of its own.
#pragma once

#include <optional>
#include <string>

namespace dialplate {

/// Unsaved work on one layout.
struct Rescue {
    std::string layout_file;  ///< Absolute.
    std::string saved;        ///< What was on disk when it was written.
    std::string text;         ///< The unsaved document.
};

/// Where the unsaved text of a layout is kept: in dialplate/ of the user's state directory (XDG Base
/// Directory Specification 0.8: $XDG_STATE_HOME, else ~/.local/state), under a name made from the layout's
/// absolute path. Empty when there is no such directory.
std::string rescue_file(const std::string& layout_file);

/// Writes it whole or not at all. @return Whether it could.
bool keep(const Rescue& rescue);
/// @return Nothing if none was kept, or it cannot be read, or it belongs to another layout.
std::optional<Rescue> kept(const std::string& layout_file);
/// The work is saved, or given up.
void forget(const std::string& layout_file);

/// Puts text into a file whole or not at all: a new file, renamed over the old one, whose permissions it
/// takes; through a symbolic link.
/// @return Empty, or why not: one sentence.
std::string write_whole(const std::string& file, const std::string& text);

}  // namespace dialplate
