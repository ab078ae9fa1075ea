// Why a layout does not fit into its microcontroller, in the ledger's figures, and what could be dropped.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"

#include <cstdint>
#include <string>

namespace dialplate {

/// What there is for the display: capacity less the boot loader and what the layout says is taken.
std::int64_t flash_room(const Ledger& ledger);
std::int64_t ram_room(const Ledger& ledger);

/// Flash: its parts and the room there is.
/// @param needed  Bytes, predicted or linked.
std::string flash_account(const Ledger& ledger, std::int64_t needed);

/// The greatest faces and pictures.
std::string what_to_drop(const Layout& layout, const Ledger& ledger);

/// RAM likewise.
std::string ram_account(const Ledger& ledger, std::int64_t needed);

}  // namespace dialplate
