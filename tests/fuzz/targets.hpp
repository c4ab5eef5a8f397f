// SPDX-License-Identifier: GPL-3.0-or-later
/// What is done with any bytes that may come as a file: read as the program reads them, and held against what the readers
/// promise. Used by the fuzzers, and by the test that tries all files of the corpus.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace tuckwright::fuzz {

/// A kit file, with its choices, its trip and its way back. Throws std::logic_error where a promise is broken: a refusal
/// without a place or words, or a kit that is accepted and cannot be used.
void try_kit(std::string_view text);

/// A table of things. Throws where what comes out is no shelf.
void try_table(std::string_view text);

/// A saved bundle, as it is read. Throws where what was read is not written again the same.
void try_saved_bundle(std::string_view text);

/// A saved bundle, as `verify` proves it and all commands that take one then tell it. Throws where they cannot.
void try_verify(std::string_view text);

/// The JSON with one value changed, doubled, left out or put in another's place, by `seed`; the text itself where it is no
/// JSON. Bytes changed at random hardly ever get past the reader.
std::string changed_json(std::string_view text, std::uint64_t seed);

} // namespace tuckwright::fuzz
