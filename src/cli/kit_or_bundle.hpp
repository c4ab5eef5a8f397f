// SPDX-License-Identifier: GPL-3.0-or-later
/// A file that may be a kit or a saved bundle.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// One of the two.
struct KitOrBundle {
    std::optional<Kit> kit;           ///< with what its trip takes along, as kit_file() gives it
    std::optional<SavedBundle> saved; ///< not yet proved
};

/// Reads the file of that path, or standard input for "-", with what is taken of a kit's choices; on the way back, if that
/// is asked for. Errors: no such file, all mistakes in it, and a saved bundle where the way back is asked for.
Result<KitOrBundle> kit_or_bundle(const std::string& path, const std::vector<Taken>& chosen, bool way_back);

} // namespace tuckwright::cli
