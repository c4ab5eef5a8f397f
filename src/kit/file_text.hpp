// SPDX-License-Identifier: GPL-3.0-or-later
/// A file's bytes.
#pragma once
#include <string>

#include "tuckwright/result.hpp"

namespace tuckwright::reading
{

/// The bytes of a file, but no more than one above `most`: enough to see that it is too large.
/// Errors: a folder, or what the system says.
Result<std::string> file_text(const std::string& path, std::size_t most);

} // namespace tuckwright::reading
