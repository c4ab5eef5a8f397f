// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/file_text.hpp"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <system_error>

namespace tuckwright::reading
{

namespace
{

Problem unreadable(const std::string& path, int error)
{
    return {path, 0, 0, "cannot be read: " + std::generic_category().message(error),
            "check the path and its permissions"};
}

} // namespace

Result<std::string> file_text(const std::string& path, std::size_t most)
{
    if (path.empty()) {
        return Problem{"", 0, 0, "the path of the kit file is empty", "give the path of a kit file"};
    }
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored)) {
        return Problem{path, 0, 0, "is a folder, not a file", "give the path of a kit file"};
    }
    errno = 0;
    const auto close = [](std::FILE* file) { std::fclose(file); };
    const std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(path.c_str(), "rb"), close);
    if (!file) {
        return unreadable(path, errno);
    }
    std::string text(most + 1, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), file.get()));
    if (std::ferror(file.get()) != 0) {
        return unreadable(path, errno);
    }
    return text;
}

} // namespace tuckwright::reading
