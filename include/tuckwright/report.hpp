// SPDX-License-Identifier: GPL-3.0-or-later
/// What people and programs read: text and JSON.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// The bundle for a person at the table: envelope, volume, weight, bound and gap, what lies in what, which rules
/// of carrying that keeps, steps, cautions.
std::string text_report(const Bundle& bundle);

/// The bundle as one JSON object ("tuckwright-bundle", version 1), ending in a newline; the same bundle gives the
/// same bytes. Lengths have as many decimals as they need, six at most, and are the very numbers that were proved.
/// Without a bundle (does-not-fit, not-found) "bundle", "gap" and "weight_g" are null and the lists empty, but for the
/// rules of carrying.
/// Requires: finite numbers, and items, containers and steps that refer to items of the bundle.
std::string to_json(const Bundle& bundle);

/// A saved bundle as its file gives it, and what in the file does not follow from the rest.
struct SavedBundle {
    Bundle bundle;
    std::vector<Problem> contradictions; ///< each with its path, such as bundle.volume_ml
    bool cover_words_differ = false;     ///< the text of its bag or of a band is not what it would be today
};

/// A bundle from its JSON, whether or not its printed figures (volume, weights, gap, rotation matrices, where steps
/// lead) follow from the rest. Errors, each with its path, such as items[3].solids[0].center: too large, not JSON, not
/// this format or version (then nothing else is told), fields missing or of the wrong kind, references to no item,
/// items twice, numbers that are not finite.
Result<SavedBundle> read_saved(std::string_view text, const std::string& name);

/// The words for each step of the bundle, in their order, as they follow from the steps and places; the texts that the
/// steps have are not looked at. Requires: a bundle to which check() has no objection.
std::vector<std::string> step_texts(const Bundle& bundle);

/// Where the words contradict what they are about: texts that do not name the item of their step, and things of which no
/// text says what is to be done to them first, though step_texts() does; each with its path. How a sentence is put is not
/// looked at, for another version may have put it otherwise. Requires: the same.
std::vector<Problem> wrong_words(const Bundle& bundle, const std::string& name);

/// The bundle with its words as they are today: forms that are posture() ("shut" for a shut lid), and texts that are
/// step_texts(). Ensures: all else is as it was. Requires: the same.
Bundle with_words_anew(Bundle bundle);

/// Whether forms and texts are those of with_words_anew(). Requires: the same.
bool has_words_of_today(const Bundle& bundle);

/// Figures that take the places to work out and do not follow from them: fits and plays that are not fits() and plays(),
/// each with its path. Requires: the same.
std::vector<Problem> wrong_figures(const Bundle& bundle, const std::string& name);

/// A bundle from its JSON; from what to_json wrote, to_json gives the same bytes again.
/// Errors: those of read_saved, and contradictions.
Result<Bundle> from_json(std::string_view text, const std::string& name);

} // namespace tuckwright
