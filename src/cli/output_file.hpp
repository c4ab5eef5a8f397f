// SPDX-License-Identifier: GPL-3.0-or-later
/// A file that is written whole or not at all.
#pragma once
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// What is wrong with writing there, or nothing. Tries it out in the folder, and leaves nothing behind; never touches
/// the file itself. Refuses folders, devices, write-protected files and the file `source`, from which is read.
std::optional<Problem> cannot_write(const std::string& path, const std::string& source);

/// Writes a new file beside the old one, makes sure that it is on the disk, and only then takes the old one's place.
/// The old one's permissions are kept.
std::optional<Problem> write_file(const std::string& path, std::string_view text);

} // namespace tuckwright::cli
