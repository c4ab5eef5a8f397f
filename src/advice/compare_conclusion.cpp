// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/compare_conclusion.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string_view>

#include "advice/compare_order.hpp"
#include "advice/compare_things.hpp"
#include "report/words.hpp"

namespace tuckwright {

namespace {

using Indices = std::vector<std::size_t>;

constexpr double equal_share = 1e-4; // of the volume; as in beats()

/// A comparison whose kits with a bundle come first.
class Facts {
public:
    explicit Facts(const Comparison& comparison) : kits_(comparison.kits)
    {
        while (packed_ < kits_.size() && kits_[packed_].trial == Trial::packed &&
               has_bundle(kits_[packed_].bundle.status)) {
            ++packed_;
        }
    }

    std::size_t packed() const { return packed_; }
    double ml(std::size_t kit) const { return volume_ml(outer_envelope(kits_[kit].bundle)); }
    double grams(std::size_t kit) const { return kits_[kit].empty_g; }

    /// Those as small as the first.
    Indices smallest() const
    {
        return packed_where([&](std::size_t k) { return ml(k) <= ml(0) * (1 + equal_share); });
    }

    Indices lightest() const
    {
        double least = grams(0);
        for (std::size_t k = 0; k < packed_; ++k) {
            least = std::min(least, grams(k));
        }
        return packed_where([&](std::size_t k) { return grams(k) <= least + 1e-6; });
    }

    /// The lightest of the smallest.
    std::size_t favourite() const
    {
        const Indices alike = smallest();
        return *std::min_element(alike.begin(), alike.end(),
                                 [&](std::size_t a, std::size_t b) { return grams(a) < grams(b); });
    }

    /// Whether it may be that somebody packs this kit, as far as is known.
    bool may_fit(std::size_t kit) const
    {
        return kits_[kit].trial != Trial::packed || kits_[kit].bundle.status != Status::does_not_fit;
    }

    /// Those that could come out as small as the first, by their bounds.
    Indices rivals(const Indices& smallest) const
    {
        Indices open;
        for (std::size_t k = 0; k < kits_.size(); ++k) {
            const bool is_known = std::find(smallest.begin(), smallest.end(), k) != smallest.end() ||
                                  kits_[k].trial == Trial::ruled_out || !may_fit(k);
            if (!is_known && kits_[k].lower_bound_ml <= ml(0)) {
                open.push_back(k);
            }
        }
        return open;
    }

    /// Those without a bundle that would be lighter.
    Indices lighter_without(double grams) const
    {
        Indices found;
        for (std::size_t k = packed_; k < kits_.size(); ++k) {
            if (kits_[k].empty_g < grams - 1e-6) {
                found.push_back(k);
            }
        }
        return found;
    }

private:
    template <class Condition> Indices packed_where(Condition holds) const
    {
        Indices found;
        for (std::size_t k = 0; k < packed_; ++k) {
            if (holds(k)) {
                found.push_back(k);
            }
        }
        return found;
    }

    const std::vector<Compared>& kits_;
    std::size_t packed_ = 0;
};

/// Those with a number in the table; how many others there are is told apart.
std::string numbered(const Comparison& comparison, const Indices& kits)
{
    Indices shown;
    for (const std::size_t k : kits) {
        if (comparison.kits[k].trial == Trial::packed) {
            shown.push_back(k);
        }
    }
    const std::size_t others = kits.size() - shown.size();
    std::string text = shown.empty() ? "" : "no. " + numbers_in_words(shown);
    if (others > 0) {
        text += fmt::format("{}{} of those not packed", shown.empty() ? "" : ", and ", others);
    }
    return text;
}

/// The same for those in the table, and with its name where it is one.
std::string named(const Comparison& comparison, const Indices& kits)
{
    const std::string numbers = numbered(comparison, kits);
    return kits.size() == 1 ? fmt::format("{} ({})", numbers, name_in_words(comparison, kits.front())) : numbers;
}

std::string proof_in_words(const Comparison& comparison, const Indices& rivals)
{
    if (rivals.empty()) {
        return "That is proved: with everything standing, lying or on its side, none of the others can be as small.";
    }
    const bool few = std::any_of(rivals.begin(), rivals.end(),
                                 [&](std::size_t k) { return comparison.kits[k].trial == Trial::left_out; });
    const char* help = few && !comparison.stopped                         ? "; --most packs more of them"
                       : comparison.effort != to_string(Effort::thorough) ? "; more --effort looks harder"
                                                                          : "";
    return fmt::format("That is as found, not proved: {} may still come out smaller, as far as the bounds tell{}.",
                       numbered(comparison, rivals), help);
}

std::string about_smallest(const Comparison& comparison, const Facts& facts)
{
    const Indices smallest = facts.smallest();
    std::string text = fmt::format("{} with {}", named(comparison, smallest),
                                   report::volume_in_words(facts.ml(0), report::Rounding::up));
    if (comparison.kits.size() == 1) {
        return report::wrapped("Only one kit: ", text + "; there is nothing to compare it with.");
    }
    const std::size_t next = smallest.size();
    if (next < facts.packed()) {
        const double less = facts.ml(next) - facts.ml(0);
        text += fmt::format(", {} or {} less than no. {}", report::volume_in_words(less, report::Rounding::down),
                            report::share_in_words(less / facts.ml(next), report::Rounding::down), next + 1);
    }
    const bool is_tie = smallest.size() > 1;
    return report::wrapped(is_tie ? "Smallest, alike: " : "Smallest: ",
                           text + ". " +
                               (next < comparison.kits.size() ? proof_in_words(comparison, facts.rivals(smallest))
                                                              : "As found, there is no difference in size."));
}

std::string about_lightest(const Comparison& comparison, const Facts& facts)
{
    if (comparison.kits.size() == 1) {
        return "";
    }
    const Indices lightest = facts.lightest();
    const std::size_t first = lightest.front();
    std::string text = fmt::format("{} with {} without contents", named(comparison, lightest),
                                   report::weight_in_words(facts.grams(first)));
    const std::size_t small = facts.favourite();
    const double less = facts.grams(small) - facts.grams(first), larger = facts.ml(first) - facts.ml(small);
    if (less > 1e-6) {
        text += fmt::format(", {} less than no. {}, but {} larger", report::weight_in_words(less), small + 1,
                            report::volume_in_words(larger, report::Rounding::up));
    } else if (lightest.size() < facts.packed()) {
        text += fmt::format("; so no. {} is best in both", small + 1);
    }
    text += ".";
    if (const Indices lighter = facts.lighter_without(facts.grams(first)); !lighter.empty()) {
        text += fmt::format(" Lighter still, but without a bundle: {}.", numbered(comparison, lighter));
    }
    return report::wrapped(lightest.size() > 1 ? "Lightest, alike: " : "Lightest: ", text);
}

/// A path as a shell takes it.
std::string for_shell(const std::string& path)
{
    const bool plain = std::all_of(path.begin(), path.end(), [](char c) {
        return std::isalnum(static_cast<unsigned char>(c)) != 0 ||
               std::string_view("/._-+").find(c) != std::string::npos;
    });
    if (plain) {
        return path;
    }
    std::string quoted = "'";
    for (const char c : path) {
        quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return quoted + "'";
}

/// The command that packs this kit again, with all its steps; on a line of its own, however long.
std::string how_to_pack(const Comparison& comparison, std::size_t kit)
{
    const Contender& best = comparison.kits[kit].contender;
    std::string command = "tuckwright pack " + for_shell(best.file);
    std::string chosen;
    for (const Taken& taken : best.chosen.taken) {
        chosen += (chosen.empty() ? " --choose " : ",") + taken.choice + "=" + taken.what;
    }
    command += chosen;
    if (comparison.effort != to_string(Effort::normal)) {
        command += " --effort " + comparison.effort;
    }
    if (comparison.seed != 1) {
        command += fmt::format(" --seed {}", comparison.seed);
    }
    return fmt::format("How no. {} is packed, step by step:\n  {}\n", kit + 1, report::printable(command));
}

} // namespace

std::string name_in_words(const Comparison& comparison, std::size_t kit)
{
    const auto& all = comparison.kits;
    const Contender& own = all[kit].contender;
    const bool one_file =
        std::all_of(all.begin(), all.end(), [&](const Compared& other) { return other.contender.file == own.file; });
    if (one_file && !own.chosen.taken.empty()) {
        std::string text;
        for (const Taken& taken : own.chosen.taken) {
            text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", taken.choice, taken.what);
        }
        return text;
    }
    const auto alike = std::count_if(all.begin(), all.end(), [&](const Compared& other) {
        return other.contender.chosen.kit.name == own.chosen.kit.name;
    });
    return alike > 1 ? fmt::format("{}, from {}", own.chosen.kit.name, own.file) : own.chosen.kit.name;
}

std::string conclusion(const Comparison& comparison)
{
    const Facts facts(comparison);
    if (facts.packed() == 0) {
        return "None of them was packed: there is nothing to decide.\n";
    }
    return about_smallest(comparison, facts) + about_lightest(comparison, facts) +
           how_to_pack(comparison, facts.favourite());
}

} // namespace tuckwright
