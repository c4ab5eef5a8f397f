// SPDX-License-Identifier: GPL-3.0-or-later
/// Running the program as users do: through the shell, in a folder of its own.
#pragma once
#include <filesystem>
#include <string>

namespace tuckwright::cli_test
{

/// A new folder, gone with all it holds at the end.
class Folder
{
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
    const std::filesystem::path& path() const { return path_; }
    std::size_t entries() const;

private:
    std::filesystem::path path_;
};

struct Outcome {
    int code = -1;
    std::string out, err;
};

/// Runs a shell command in which $TUCKWRIGHT is the program; standard input is empty unless the command says otherwise.
Outcome shell(const std::string& command);

/// Runs the program with arguments that are written as for the shell.
Outcome program(const std::string& arguments);

/// The path or text, quoted for the shell.
std::string quoted(const std::string& text);

std::string text_of(const std::filesystem::path& path);
void write(const std::filesystem::path& path, const std::string& text);

inline bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// A kit that is packed in a moment.
inline const std::string two_tins = R"(kit: Two tins
bundle: {shape: cylinder}
items:
  - {id: tin, weight: 50 g, cylinder: {diameter: 60, height: 40}}
  - {id: box, weight: 20 g, cylinder: {diameter: 50, height: 30}}
)";

} // namespace tuckwright::cli_test
