// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/input_text.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

namespace tuckwright::cli
{

namespace
{

/// Reads in pieces, for a pipe gives what it has and the file's size is not known.
bool read_all(std::FILE* file, std::size_t most, std::string& text)
{
    std::array<char, 65536> piece{};
    while (text.size() <= most) {
        const std::size_t got = std::fread(piece.data(), 1, piece.size(), file);
        text.append(piece.data(), got);
        if (got < piece.size()) {
            break;
        }
    }
    text.resize(std::min(text.size(), most + 1));
    return std::ferror(file) == 0;
}

} // namespace

Result<std::string> input_text(const std::string& path, std::size_t most)
{
    const bool from_pipe = path == dash;
    const std::string name = from_pipe ? standard_input : path;
    const auto unreadable = [&](int error) {
        return Problem{name, 0, 0, "cannot be read: " + std::generic_category().message(error),
                       error == ENOENT && (path.ends_with(".yaml") || path.ends_with(".yml"))
                           ? "check the path; 'tuckwright new' starts a kit file"
                           : "check the path and its permissions"};
    };
    if (path.empty()) {
        return Problem{"", 0, 0, "the path of the file is empty", "give the path of a file, or - for standard input"};
    }
    std::error_code ignored;
    if (!from_pipe && std::filesystem::is_directory(path, ignored)) {
        return Problem{name, 0, 0, "is a folder, not a file", "give the path of a file"};
    }
    const auto close = [](std::FILE* file) { file == stdin ? 0 : std::fclose(file); };
    errno = 0;
    const std::unique_ptr<std::FILE, decltype(close)> file(from_pipe ? stdin : std::fopen(path.c_str(), "rb"), close);
    if (!file) {
        return unreadable(errno);
    }
    std::string text;
    if (!read_all(file.get(), most, text)) {
        return unreadable(errno);
    }
    return text;
}

} // namespace tuckwright::cli
