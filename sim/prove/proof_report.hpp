// A proof for people, for programs, and as pictures.
#pragma once

#include "sim/prove/proof.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// One line when all is well; what differs, and where, when it is not.
std::string proof_text(const Proof& proof);

/// The members: layout, toolchain, flash, ram, frames, pixels_different, bus_bytes_different, bus_faults,
/// time, ok; on a failure also `failure`, a sentence, and `first_difference`.
nlohmann::ordered_json proof_json(const Proof& proof);

/// Writes LAYOUT-expected.ppm, LAYOUT-actual.ppm and LAYOUT-difference.ppm (white where they differ), as
/// portable pixmaps: 8 bits a channel, binary.
/// @return The files written; fewer than three when one could not be.
std::vector<std::filesystem::path> write_pictures(const Proof& proof,
                                                  const std::filesystem::path& directory);

}  // namespace dialplate
