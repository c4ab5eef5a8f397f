// SPDX-License-Identifier: GPL-3.0-or-later
/// Other people's programs that look at our files, where they are installed.
#pragma once
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

namespace tuckwright::test {

inline bool has_tool(const std::string& name)
{
    return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0;
}

/// What a shell command prints.
inline std::string printed_by(const std::string& command)
{
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
    std::string text;
    for (int c = pipe ? std::fgetc(pipe.get()) : EOF; c != EOF; c = std::fgetc(pipe.get())) {
        text += static_cast<char>(c);
    }
    return text;
}

} // namespace tuckwright::test
