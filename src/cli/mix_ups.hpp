// SPDX-License-Identifier: GPL-3.0-or-later
/// Files given to the wrong command, and words mistyped on the command line.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::cli {

/// What files are called in another_file().
inline constexpr const char* a_kit = "a kit file";
inline constexpr const char* a_bundle = "a saved bundle";
inline constexpr const char* a_kit_or_bundle = "a kit file or a saved bundle";
inline constexpr const char* a_table = "a table of things (CSV)";

/// Whether a text has a line that starts as a kit file's do, with `kit:` or `items:`.
bool looks_like_kit(std::string_view text);
/// Whether a text starts as a bundle's JSON does.
bool looks_like_bundle(std::string_view text);

/// What is wrong with a file that by its first bytes is something else altogether, such as a picture, an archive or a page, or
/// a table where a kit or a bundle is `wanted` ("a kit file"); nothing if it may be that.
std::optional<Problem> another_file(std::string_view text, const std::string& name, const std::string& wanted);

/// What is wrong with a text that is another answer of this program, such as that of `fill`; nothing if it is none.
std::optional<Problem> another_answer(std::string_view text, const std::string& name);

/// What is wrong with arguments that were not expected, for the command that was given or for none. Options are those
/// known there, commands all that there are.
std::string about_unexpected(const std::vector<std::string>& arguments, std::string_view command,
                             const std::vector<std::string>& options, const std::vector<std::string>& commands);

} // namespace tuckwright::cli
