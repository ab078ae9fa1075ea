// A proof for people, for programs, and as pictures.
#pragma once

#include "sim/prove/proof.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// One line: the layout, ok or FAILED, what was compared, and flash and RAM of what there is beside the
/// rest of the program. Of a layout that was refused, why.
/// @param name_width  Bytes to which the name of the layout is filled up.
std::string proof_line(const Proof& proof, std::size_t name_width);

/// More lines, indented: what went wrong and where, sizes and times against the ledger.
std::string proof_details(const Proof& proof);

/// The members: layout, toolchain, flash, ram, frames, pixels_different, bus_bytes_different, bus_faults,
/// time, ok; on a failure also `failure`, a sentence, and `first_difference`.
nlohmann::ordered_json proof_json(const Proof& proof);

/// Writes LAYOUT-expected.ppm, LAYOUT-actual.ppm and LAYOUT-difference.ppm (white where they differ), as
/// portable pixmaps: 8 bits a channel, binary.
/// @return The files written; fewer than three when one could not be.
std::vector<std::filesystem::path> write_pictures(const Proof& proof,
                                                  const std::filesystem::path& directory);

}  // namespace dialplate
