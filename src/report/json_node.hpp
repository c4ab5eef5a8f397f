// SPDX-License-Identifier: GPL-3.0-or-later
/// Reading fields from JSON so that every fault is told at once, each with its path, such as items[3].solids[0].center.
#pragma once
#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::report
{

/// The faults of one file. After some dozens the rest is left out: nobody reads on, and files may be large.
class Faults
{
public:
    explicit Faults(std::string file) : file_(std::move(file)) {}
    void add(const std::string& path, const std::string& what, const std::string& remedy = "");
    bool any() const { return !problems_.empty(); }
    std::vector<Problem> take() { return std::move(problems_); }

private:
    std::string file_;
    std::vector<Problem> problems_;
};

/// A value and where it stands. Reading what is missing or of another kind adds a fault and gives nought or nothing.
class Node
{
public:
    Node(const nlohmann::json& value, std::string path, Faults& faults)
        : value_(&value), path_(std::move(path)), faults_(&faults)
    {
    }

    const std::string& path() const { return path_; }
    bool null() const { return value_->is_null(); }
    void fault(const std::string& what, const std::string& remedy = "") const { faults_->add(path_, what, remedy); }

    /// Whether it is an object; a fault otherwise.
    bool object() const;
    bool has(const char* key) const { return value_->is_object() && value_->contains(key); }
    /// A field that must be there. Nothing, and no further fault, where this is no object.
    std::optional<Node> field(const char* key) const;
    /// The entries of a list with a length between two bounds; empty with a fault otherwise.
    std::vector<Node> list(std::size_t fewest, std::size_t most) const;

    std::string text() const;
    bool flag() const;
    /// A number that is at most so large, up or down.
    double number(double largest) const;
    double length() const; ///< mm, within what the grid can hold
    std::int64_t whole(std::int64_t least, std::int64_t most) const;
    std::uint64_t natural() const;
    std::size_t index() const; ///< a whole number from 0

    // The same for a field; nought or nothing where it is missing.
    std::string text(const char* key) const;
    bool flag(const char* key) const;
    double number(const char* key, double largest) const;
    double length(const char* key) const;
    std::vector<Node> list(const char* key, std::size_t fewest, std::size_t most) const;

private:
    void wrong_kind(const char* wanted) const;
    const nlohmann::json* value_;
    std::string path_;
    Faults* faults_;
};

} // namespace tuckwright::report
