// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/program.hpp"

#include <stdlib.h>
#include <sys/wait.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace tuckwright::cli_test
{

namespace fs = std::filesystem;

Folder::Folder()
{
    std::string name = (fs::temp_directory_path() / "tuckwright-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) {
        throw std::runtime_error("no temporary folder");
    }
    path_ = name;
}

Folder::~Folder()
{
    std::error_code ignored;
    fs::permissions(path_, fs::perms::owner_all, ignored);
    fs::remove_all(path_, ignored);
}

std::size_t Folder::entries() const
{
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
}

std::string quoted(const std::string& text)
{
    std::string result = "'";
    for (const char c : text) {
        result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return result + "'";
}

std::string text_of(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write(const fs::path& path, const std::string& text)
{
    std::ofstream file(path, std::ios::binary);
    file << text;
    file.close();
    if (!file) {
        throw std::runtime_error("cannot write " + path.string());
    }
}

Outcome shell(const std::string& command)
{
    const Folder said;
    const std::string whole = "TUCKWRIGHT=" + quoted(TUCKWRIGHT_PROGRAM) + "; { " + command + "\n} </dev/null >" +
                              quoted((said / "out").string()) + " 2>" + quoted((said / "err").string());
    const int status = std::system(whole.c_str());
    Outcome outcome;
    outcome.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    outcome.out = text_of(said / "out");
    outcome.err = text_of(said / "err");
    return outcome;
}

Outcome program(const std::string& arguments) { return shell("\"$TUCKWRIGHT\" " + arguments); }

} // namespace tuckwright::cli_test
