// SPDX-License-Identifier: GPL-3.0-or-later
/// Reading a kit file (YAML).
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// What is taken of one of a file's choices, by the words of the file.
struct Taken {
    std::string choice, what;
    friend bool operator==(const Taken&, const Taken&) = default;
};

/// A kit in which every choice of its file is settled. The kit's name tells what was taken.
struct ChosenKit {
    Kit kit;
    std::vector<Taken> taken; ///< in the file's order; none where the file has no choices
};

/// Reads a kit from a file. Ensures: either a kit in which every index, dimension and rule is sound, or every problem
/// of the file, in the order of their places. Errors: unreadable path, too large, not YAML, each faulty entry, and each
/// choice that is left open.
Result<Kit> read_kit_file(const std::string& path);

/// The same from text; `name` stands for the file in problems. Of a file with choices, the kit with those alternatives.
/// Errors: also choices and alternatives that the file does not have.
Result<Kit> read_kit_text(std::string_view text, const std::string& name, const std::vector<Taken>& chosen = {});

/// Every combination of the choices in the text, in the file's order, the last choice changing first; the one kit where
/// there are no choices. Errors: as above, and too many combinations. Problems that several combinations share are told once.
Result<std::vector<ChosenKit>> read_kits_text(std::string_view text, const std::string& name);

/// The path of the shelf that the text of a kit file names, seen from where `path` is; nothing where it names none, or is
/// not to be read.
std::optional<std::string> shelf_named_in(std::string_view text, const std::string& path);

} // namespace tuckwright
