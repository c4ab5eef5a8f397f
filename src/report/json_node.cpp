// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_node.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "report/words.hpp"

namespace tuckwright::report
{

namespace
{

constexpr std::size_t most_faults = 50;

const char* kind_of(const nlohmann::json& value)
{
    switch (value.type()) {
    case nlohmann::json::value_t::null: return "null";
    case nlohmann::json::value_t::object: return "an object";
    case nlohmann::json::value_t::array: return "a list";
    case nlohmann::json::value_t::string: return "text";
    case nlohmann::json::value_t::boolean: return "true or false";
    default: return "a number";
    }
}

} // namespace

void Faults::add(const std::string& path, const std::string& what, const std::string& remedy)
{
    if (problems_.size() < most_faults) {
        problems_.push_back({file_, 0, 0, printable(path.empty() ? what : path + ": " + what), remedy});
    }
}

void Node::wrong_kind(const char* wanted) const
{
    fault(fmt::format("must be {}, but is {}", wanted, kind_of(*value_)));
}

bool Node::object() const
{
    if (!value_->is_object()) {
        wrong_kind("an object");
    }
    return value_->is_object();
}

std::optional<Node> Node::field(const char* key) const
{
    if (!value_->is_object()) {
        return std::nullopt;
    }
    const std::string path = path_.empty() ? key : path_ + "." + key;
    const auto found = value_->find(key);
    if (found == value_->end()) {
        faults_->add(path, "is missing");
        return std::nullopt;
    }
    return Node(*found, path, *faults_);
}

std::vector<Node> Node::list(std::size_t fewest, std::size_t most) const
{
    if (!value_->is_array()) {
        wrong_kind("a list");
        return {};
    }
    if (value_->size() < fewest || value_->size() > most) {
        const std::string wanted = fewest == most ? fmt::format("{}", fewest) : fmt::format("{} to {}", fewest, most);
        fault(fmt::format("has {} entries; it must have {}", value_->size(), wanted));
        return {};
    }
    std::vector<Node> entries;
    entries.reserve(value_->size());
    for (std::size_t i = 0; i < value_->size(); ++i) {
        entries.emplace_back((*value_)[i], fmt::format("{}[{}]", path_, i), *faults_);
    }
    return entries;
}

std::string Node::text() const
{
    if (!value_->is_string()) {
        wrong_kind("text");
        return {};
    }
    return value_->get<std::string>();
}

bool Node::flag() const
{
    if (!value_->is_boolean()) {
        wrong_kind("true or false");
        return false;
    }
    return value_->get<bool>();
}

double Node::number(double largest) const
{
    if (!value_->is_number()) {
        wrong_kind("a number");
        return 0;
    }
    const double value = value_->get<double>();
    if (!(std::abs(value) <= largest)) {
        fault(fmt::format("is {}; it must lie between {} and {}", value, -largest, largest));
        return 0;
    }
    return value;
}

double Node::length() const
{
    constexpr double largest = 1e9; // mm: what is still counted in nanometres; the check draws the line much lower
    return number(largest);
}

std::int64_t Node::whole(std::int64_t least, std::int64_t most) const
{
    if (!value_->is_number_integer()) {
        value_->is_number() ? fault(fmt::format("must be a whole number from {} to {}", least, most))
                            : wrong_kind("a whole number");
        return least;
    }
    const bool too_large =
        value_->is_number_unsigned() &&
        value_->get<std::uint64_t>() > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
    const std::int64_t value = too_large ? most : value_->get<std::int64_t>();
    if (too_large || value < least || value > most) {
        fault(fmt::format("is {}; it must lie between {} and {}", value_->dump(), least, most));
        return least;
    }
    return value;
}

std::uint64_t Node::natural() const
{
    if (!value_->is_number_unsigned()) {
        fault(fmt::format("must be a whole number from 0 to {}", std::numeric_limits<std::uint64_t>::max()));
        return 0;
    }
    return value_->get<std::uint64_t>();
}

std::size_t Node::index() const { return static_cast<std::size_t>(whole(0, 1'000'000)); }

std::string Node::text(const char* key) const
{
    const auto part = field(key);
    return part ? part->text() : std::string();
}

bool Node::flag(const char* key) const
{
    const auto part = field(key);
    return part && part->flag();
}

double Node::number(const char* key, double largest) const
{
    const auto part = field(key);
    return part ? part->number(largest) : 0;
}

double Node::length(const char* key) const
{
    const auto part = field(key);
    return part ? part->length() : 0;
}

std::vector<Node> Node::list(const char* key, std::size_t fewest, std::size_t most) const
{
    const auto part = field(key);
    return part ? part->list(fewest, most) : std::vector<Node>();
}

} // namespace tuckwright::report
