// SPDX-License-Identifier: GPL-3.0-or-later
/// The project's own files, as the tests of the house read them.
#pragma once
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace tuckwright::house
{

inline const std::filesystem::path& root()
{
    static const std::filesystem::path path = TUCKWRIGHT_SOURCE_DIR;
    return path;
}

inline std::string text_of(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// Files below a folder of the project with one of the endings, as paths from the root; not what others brought along.
inline std::vector<std::string> files_below(const std::string& folder, const std::vector<std::string>& endings)
{
    std::vector<std::string> found;
    namespace fs = std::filesystem;
    for (auto entry = fs::recursive_directory_iterator(root() / folder); entry != fs::recursive_directory_iterator();
         ++entry) {
        if (entry->path().filename() == "node_modules") {
            entry.disable_recursion_pending();
        }
        for (const auto& ending : endings) {
            if (entry->is_regular_file() && entry->path().extension() == ending) {
                found.push_back(fs::relative(entry->path(), root()).generic_string());
            }
        }
    }
    return found;
}

} // namespace tuckwright::house
