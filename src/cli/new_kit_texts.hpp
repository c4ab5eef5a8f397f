// SPDX-License-Identifier: GPL-3.0-or-later
/// Files that are part of the program, put into it while it is built.
#pragma once
#include <string_view>

namespace tuckwright::cli
{

/// src/cli/new_kit.yaml
std::string_view new_kit_template();

/// kits/kit.schema.json
std::string_view kit_schema();

} // namespace tuckwright::cli
