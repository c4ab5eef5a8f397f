// SPDX-License-Identifier: GPL-3.0-or-later
/// The entries of a group of fields in the file, and the plain values they hold. Whatever is wrong becomes a problem at
/// its place.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "kit/document.hpp"
#include "kit/quantity.hpp"

namespace tuckwright::reading
{

/// What every part of the reader needs: where problems go, and what plain numbers mean.
struct Reading {
    ProblemList& problems;
    Units units;
    Length usual_tolerance{}; ///< of dimensions that carry none of their own
    Units shelf_units{};      ///< what plain numbers mean in the file that the first one names

    const Units& units_at(Place place) const { return place.file == 0 ? units : shelf_units; }
};

/// What may stand in a group of fields.
struct KnownFields {
    std::span<const std::string_view> keys;
    std::string_view example;                      ///< how such a group is written, for who wrote something else
    std::span<const std::string_view> needed = {}; ///< keys that Fields::need asks for, whatever else is there
    std::span<const std::string_view> elsewhere = {}; ///< keys that are right in another place
    std::string_view where = {};                      ///< and what to do with them
};

/// A group of fields whose keys are known. Unknown keys and keys without a value are reported once: those needed when
/// they are asked for, all others when it is made.
class Fields
{
public:
    /// `subject` names the group in problems, such as "an item". A node that is no such group is reported and holds
    /// nothing.
    Fields(Reading& reading, const Node& node, std::string subject, const KnownFields& known);

    bool is_map() const { return map_ != nullptr; }
    /// Whether the key is there at all, be its value usable or not.
    bool given(std::string_view key) const { return entry(key) != nullptr; }
    /// The value, or nothing where there is none to go on with.
    const Node* find(std::string_view key) const;
    /// The same; reports a key that is not there, or stands there without a value. The remedy says what to write.
    const Node* need(std::string_view key, const std::string& remedy);
    /// The entry; nothing where the key is not there.
    const Entry* entry(std::string_view key) const;
    /// Reports an entry that must not be there (it is).
    void refuse(std::string_view key, const std::string& what, const std::string& remedy);
    /// Place of the group itself.
    Place place() const { return place_; }
    const std::string& subject() const { return subject_; }

private:
    void check_key(const Entry& entry, const KnownFields& known);

    Reading& reading_;
    std::string subject_;
    std::span<const std::string_view> needed_;
    Place place_;
    const Node* map_ = nullptr;
};

/// A dimension as it was measured, and how far it may be off either way.
struct Measured {
    Length size, off;
};

/// How small a length may be; none may be above the longest that the program works with (10 m).
enum class AtLeast { negative, zero, micrometre };

/// One line of text, not empty. `subject` names the value in problems, such as "name".
std::optional<std::string> read_text(Reading& reading, const Node& node, const std::string& subject);
std::optional<Length> read_length(Reading& reading, const Node& node, const std::string& subject, AtLeast least);
/// The same for a dimension, which may carry a tolerance: "64 ±0.5". Without one it has that of `otherwise`. Ensures: the
/// tolerance is smaller than the size, or nought.
std::optional<Measured> read_measured(Reading& reading, const Node& node, const std::string& subject, AtLeast least,
                                      Length otherwise);
/// Grams, from 0 to 100 kg.
std::optional<double> read_weight(Reading& reading, const Node& node, const std::string& subject);
/// Millilitres, above 0 and up to 1000 l.
std::optional<double> read_volume(Reading& reading, const Node& node, const std::string& subject);
/// "yes" or "no".
std::optional<bool> read_yes_or_no(Reading& reading, const Node& node, const std::string& subject);
/// A whole number from `low` to `high`.
std::optional<int> read_whole(Reading& reading, const Node& node, const std::string& subject, int low, int high);
/// The index of the word among those known.
std::optional<std::size_t> read_word(Reading& reading, const Node& node, const std::string& subject,
                                     std::span<const std::string_view> known);

} // namespace tuckwright::reading
