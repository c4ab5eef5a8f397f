// SPDX-License-Identifier: GPL-3.0-or-later
/// The program as a process among others.
#pragma once

namespace tuckwright::cli
{

inline constexpr const char* not_enough_memory =
    "tuckwright: there is not enough memory for this; give it more ('ulimit -v' shows a limit), or ask for less: fewer "
    "things, --threads 1\n";
inline constexpr const char* library_gave_up =
    "tuckwright: a library that it uses gave up: a bug, or memory ran out. If there is memory enough, please report it, with "
    "the file you gave and the options.\n";

/// Prepares for a place that is not as usual. Where standard input, output or error are shut, no file that is opened later
/// takes their place, so that no message ends up in an answer; and a file larger than the system lets us write is an error
/// like a full disk, and not the end. Libraries that abort, as some do where memory runs out, do so with a message of ours.
void prepare_process();

/// To be called before a search whose answer is drawn: the libraries of fonts crash where memory runs out, so it is asked
/// for beforehand. Throws std::bad_alloc where there is too little.
void require_memory_for_drawing();

} // namespace tuckwright::cli
