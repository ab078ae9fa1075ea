// From files in memory to a directory, without harm to what is there.
#pragma once

#include "sim/emit/emission.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// What became of a directory. With an error nothing of it has changed.
struct DirectoryWritten {
    std::string error;  ///< Empty, or a sentence.
    std::vector<std::string> written;
    std::vector<std::string> unchanged;  ///< Held the same bytes already.
    std::vector<std::string> kept;       ///< Changed by the author since they were written.
    std::vector<std::string> removed;    ///< Of an earlier emission, and no longer part of it.
};

/// Writes an emission and its manifest. The directory is made if it is not there. One that holds files which
/// an emission did not write is refused, as is one where a file that is not the author's to change was
/// changed; `force` writes nevertheless, over files of the same names, and leaves all others alone.
/// All files are written beside their places first; then they are moved there, and moved back if one of the
/// moves fails.
DirectoryWritten write_directory(const std::filesystem::path& directory,
                                 const Emission& emission,
                                 bool force);

}  // namespace dialplate
