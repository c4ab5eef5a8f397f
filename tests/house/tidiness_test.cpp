// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cstdio>
#include <memory>
#include <set>
#include <sstream>

#include "house/files.hpp"

using namespace tuckwright::house;

namespace
{

const std::set<std::string> top_level{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "src",
                                      "include",        "tests",     "kits",          "viz"};

/// What the project's history holds at its top, or nothing where there is no history (an unpacked archive).
std::set<std::string> tracked_at_top()
{
    const std::string command = "git -C '" + root().string() + "' ls-files 2>/dev/null";
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
    REQUIRE(pipe);
    std::set<std::string> entries;
    std::string text;
    for (int c = std::fgetc(pipe.get()); c != EOF; c = std::fgetc(pipe.get())) {
        text += static_cast<char>(c);
    }
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        entries.insert(line.substr(0, line.find('/')));
    }
    return entries;
}

/// Whether one of the first lines names the licence; scripts and pages need their own first line.
bool names_licence(const std::string& text, const std::string& path)
{
    const bool first_only = path.find(".cpp") != std::string::npos || path.find(".hpp") != std::string::npos;
    const std::size_t most_lines = first_only ? 1 : 3;
    std::istringstream lines(text);
    std::string line;
    for (std::size_t i = 0; i < most_lines && std::getline(lines, line); ++i) {
        if (line.find("SPDX-License-Identifier: GPL-3.0-or-later") != std::string::npos) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("the top folder holds what it should and nothing else")
{
    auto entries = tracked_at_top();
    if (entries.empty()) {
        for (const auto& entry : top_level) {
            INFO(entry);
            CHECK(std::filesystem::exists(root() / entry));
        }
        return;
    }
    std::set<std::string> visible;
    for (const auto& entry : entries) {
        if (entry[0] != '.') {
            visible.insert(entry);
        }
    }
    CHECK(visible == top_level);
}

TEST_CASE("every source names its licence")
{
    std::size_t read = 0;
    for (const char* folder : {"src", "include", "tests", "viz"}) {
        for (const auto& path : files_below(folder, {".cpp", ".hpp", ".js", ".mjs", ".ts", ".cmake", ".sh", ".py"})) {
            INFO(path);
            CHECK(names_licence(text_of(root() / path), path));
            ++read;
        }
    }
    CHECK(read > 50);
    CHECK(names_licence(text_of(root() / "CMakeLists.txt"), "CMakeLists.txt"));
    CHECK(names_licence(text_of(root() / "tests/CMakeLists.txt"), "CMakeLists.txt"));
}

TEST_CASE("a source without its licence, or with it further down, is rejected")
{
    const std::string licence = "// SPDX-License-Identifier: GPL-3.0-or-later\n";
    CHECK(names_licence(licence + "int x;\n", "a.cpp"));
    CHECK_FALSE(names_licence("int x;\n", "a.cpp"));
    CHECK_FALSE(names_licence("\n" + licence, "a.hpp"));
    CHECK_FALSE(names_licence("// SPDX-License-Identifier: MIT\n", "a.cpp"));
    CHECK(names_licence("#!/bin/sh\n# SPDX-License-Identifier: GPL-3.0-or-later\n", "a.sh"));
    CHECK_FALSE(names_licence("1\n2\n3\n" + licence, "a.js"));
}

namespace {

/// Whether a lock file of npm's tells where packages are downloaded from: that is for each machine's own settings.
bool names_downloads(const std::string& lock)
{
    return lock.find("\"resolved\"") != std::string::npos || lock.find("://") != std::string::npos;
}

} // namespace

TEST_CASE("the lock of the picture's packages names each by its digest, and no place to download it from")
{
    const std::string lock = text_of(root() / "viz/package-lock.json");
    CHECK_FALSE(names_downloads(lock));
    for (const char* package : {"node_modules/three", "node_modules/esbuild", "node_modules/playwright-core", "node_modules/yaml",
                                "node_modules/@cfworker/json-schema"}) {
        const auto at = lock.find('"' + std::string(package) + '"');
        INFO(package);
        REQUIRE(at != std::string::npos);
        CHECK(lock.find("\"integrity\": \"sha512-", at) != std::string::npos);
    }
    CHECK(names_downloads("{\"resolved\": \"x\"}"));
    CHECK(names_downloads("{\"from\": \"https://example.org/a.tgz\"}"));
}
