// SPDX-License-Identifier: GPL-3.0-or-later
#include "house/layers.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <regex>
#include <sstream>
#include <utility>

namespace tuckwright::house
{

namespace
{

using Rooms = std::map<std::string, Room>;

std::string trimmed(const std::string& text)
{
    const auto start = text.find_first_not_of(" \t");
    return start == std::string::npos ? "" : text.substr(start, text.find_last_not_of(" \t\r") - start + 1);
}

std::vector<std::string> cells_of(const std::string& row)
{
    std::vector<std::string> cells;
    std::istringstream parts(row.substr(1));
    for (std::string cell; std::getline(parts, cell, '|');) {
        cells.push_back(trimmed(cell));
    }
    return cells;
}

std::string room_of_header(const std::string& stem, const Rooms& rooms)
{
    for (const auto& [name, room] : rooms) {
        if (room.headers.count(stem) > 0) {
            return name;
        }
    }
    return {};
}

/// The room that a source or a public header belongs to; empty if it belongs to none.
std::string room_of_file(const std::string& path, const Rooms& rooms)
{
    std::smatch parts;
    if (std::regex_match(path, parts, std::regex("include/tuckwright/([a-z_]+)\\.hpp"))) {
        return room_of_header(parts[1], rooms);
    }
    if (std::regex_match(path, parts, std::regex("src/([a-z_]+)/[a-z_0-9/]+\\.[ch]pp")) && rooms.count(parts[1]) > 0) {
        return parts[1];
    }
    return {};
}

/// Why a room may not include something of another, or nothing. The exact check must not trust what the search does.
std::string objection_to_room(const std::string& from, const std::string& to, const std::string& header,
                              const Rooms& rooms)
{
    if (from == to) {
        return {};
    }
    if (from == "proof" && header == "tuckwright/geometry.hpp") {
        return "the proof must not use the search's geometry";
    }
    const int above = rooms.at(from).layer, below = rooms.at(to).layer;
    if (above == below) {
        return "room " + from + " must not see its neighbour " + to;
    }
    if (above < below) {
        return "room " + from + " must not see " + to + ", which lies above it";
    }
    if (from == "proof" && to == "packing") {
        return "the proof must not use the search's packing";
    }
    return {};
}

std::string objection_to_quoted(const std::string& from, const std::string& header, bool is_public, const Rooms& rooms)
{
    const auto slash = header.find('/');
    if (slash == std::string::npos) {
        return "name the header with its room";
    }
    const std::string folder = header.substr(0, slash);
    std::string to = folder;
    if (folder == "tuckwright") {
        const auto stem = header.substr(slash + 1, header.rfind('.') - slash - 1);
        to = room_of_header(stem, rooms);
        if (to.empty()) {
            return "the public header " + stem + " is not in the table of rooms";
        }
    } else if (rooms.count(folder) == 0) {
        return "there is no room " + folder;
    } else if (is_public) {
        return "a public header includes public ones only";
    }
    return objection_to_room(from, to, header, rooms);
}

/// Outside libraries: what their headers start with, and their word in the table. fmt is for everybody's messages.
constexpr std::array<std::pair<const char*, const char*>, 9> libraries{{{"CGAL/", "CGAL"},
                                                                        {"boost/", "Boost"},
                                                                        {"yaml-cpp/", "yaml-cpp"},
                                                                        {"nlohmann/", "nlohmann"},
                                                                        {"CLI/", "CLI11"},
                                                                        {"glpk.h", "GLPK"},
                                                                        {"cairo", "cairo"},
                                                                        {"pango/", "pango"},
                                                                        {"fmt/", ""}}};

std::string objection_to_angled(const std::string& from, const std::string& header, bool is_public, const Rooms& rooms)
{
    if (header.find('/') == std::string::npos && header.find('.') == std::string::npos) {
        return {}; // the standard library
    }
    if (is_public) {
        return "no outside library in a public header";
    }
    for (const auto& [prefix, word] : libraries) {
        if (header.rfind(prefix, 0) == 0) {
            const bool allowed = rooms.at(from).libraries.find(word) != std::string::npos;
            return allowed ? "" : "room " + from + " must not use " + word;
        }
    }
    static const std::set<std::string> of_the_system{"unistd.h", "fcntl.h", "signal.h", "sys/mman.h", "sys/stat.h"};
    if (of_the_system.count(header) > 0) {
        return from == "cli" ? "" : "only the command line talks to the system";
    }
    return "<" + header + "> belongs to no library that is known here";
}

} // namespace

std::map<std::string, Room> rooms_from_table(const std::string& developers_text)
{
    Rooms rooms;
    std::istringstream lines(developers_text);
    for (std::string line; std::getline(lines, line);) {
        if (line.size() < 3 || line[0] != '|' || std::isdigit(static_cast<unsigned char>(line[2])) == 0) {
            continue;
        }
        const auto cells = cells_of(line);
        if (cells.size() < 5) {
            continue;
        }
        Room room;
        room.layer = std::stoi(cells[0]);
        std::istringstream names(cells[3]);
        for (std::string name; std::getline(names, name, ',');) {
            if (!trimmed(name).empty()) {
                room.headers.insert(trimmed(name));
            }
        }
        room.libraries = cells[4];
        rooms[cells[1]] = room;
    }
    return rooms;
}

std::vector<std::string> objections(const Source& source, const Rooms& rooms)
{
    const std::string room = room_of_file(source.path, rooms);
    if (room.empty()) {
        return {source.path + ": belongs to no room of the table"};
    }
    const bool is_public = source.path.rfind("include/", 0) == 0;
    static const std::regex include("\\s*#\\s*include\\s*([<\"])([^>\"]+)[>\"].*");
    static const std::regex any_include("\\s*#\\s*include.*");
    std::vector<std::string> found;
    std::istringstream lines(source.text);
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
        ++number;
        if (!std::regex_match(line, any_include)) {
            continue;
        }
        std::smatch parts;
        std::string why = "this include cannot be read";
        if (std::regex_match(line, parts, include)) {
            why = parts[1] == "<" ? objection_to_angled(room, parts[2], is_public, rooms)
                                  : objection_to_quoted(room, parts[2], is_public, rooms);
        }
        if (!why.empty()) {
            found.push_back(source.path + ":" + std::to_string(number) + ": " + why);
        }
    }
    return found;
}

} // namespace tuckwright::house
