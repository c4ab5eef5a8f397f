// SPDX-License-Identifier: GPL-3.0-or-later
/// What clang++ 14 lacks of the standard library, included before everything when the fuzzers are built with it.
#pragma once
#include <source_location>

#ifndef __cpp_lib_source_location
#include <cstdint>

namespace std {

struct source_location {
    static constexpr source_location current(const char* file = __builtin_FILE(), uint_least32_t line = __builtin_LINE())
    {
        source_location here;
        here.file_ = file;
        here.line_ = line;
        return here;
    }
    constexpr const char* file_name() const { return file_; }
    constexpr uint_least32_t line() const { return line_; }

private:
    const char* file_ = "";
    uint_least32_t line_ = 0;
};

} // namespace std
#endif
