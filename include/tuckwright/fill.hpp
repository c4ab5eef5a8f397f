// SPDX-License-Identifier: GPL-3.0-or-later
/// What goes into one vessel, of more than it may be able to take.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright {

/// Why a thing stays outside.
enum class LeftOut {
    too_large,   ///< proved: it goes in in no turn, even alone
    by_rule,     ///< a rule of carrying keeps it off the vessel, or off what is in it
    too_much,    ///< proved: with everything standing, lying or on its side, not together with the things named
    not_together,///< it goes in, but was not found to go in together with the things named
    not_alone,   ///< it was not found to go in even alone, which is no proof
    not_tried    ///< no better set with it was tried within this effort
};

/// "too-large", "by-rule", "too-much", "not-together", "not-alone", "not-tried".
const char* to_string(LeftOut why);

/// Some copies of an item that stay outside, all for one reason.
struct Left {
    std::string id, name;
    int copies = 1;
    LeftOut why = LeftOut::not_tried;
    std::vector<std::string> with; ///< ids of what it does not go in with; of itself where another copy is meant
    std::string words;             ///< the reason, a sentence
};

/// How sure it is that no better set goes in.
enum class Choice {
    proved,    ///< every better set is proved not to go in
    searched,  ///< every better set holds things that were not found to go in together
    cut_short, ///< better sets were left untried, or the search was stopped
    none       ///< not even what must go in was found to
};

/// "proved", "searched", "cut-short", "none".
const char* to_string(Choice choice);

struct Filling {
    std::string kit;         ///< the kit's name
    std::string vessel;      ///< id of the vessel
    std::string lid;         ///< id of the lid that is shut on it; empty for none
    bool own_lid = false;    ///< its own lid is shut
    Bundle bundle;           ///< the vessel, its lid and what is in it; has_bundle() unless the choice is none
    int things = 0;          ///< how many went in, copies counted; of them those taken are in the bundle
    int candidates = 0;      ///< of so many
    double room_ml = 0;      ///< what the vessel holds, shut, without clearances
    double filled_ml = 0;    ///< what the outsides of the things directly in it take of that
    Choice choice = Choice::none;
    std::vector<Left> left;  ///< in the kit's order
    int tries = 0;           ///< how many sets were packed
};

/// The id of the vessel that people would mean: the one with the largest inside that something can go into, not a sleeve;
/// nothing where there is none.
std::string usual_vessel(const Kit& kit);

/// What is wrong with filling that item: there is none of that id, it is no vessel, a sleeve, or filled by its contents.
/// Nothing where it can be filled.
std::vector<Problem> problems_of_vessel(const Kit& kit, const std::string& vessel);

/// The best of the kit's other things that go into the vessel with its lid shut, or below its rim where it has none: the
/// highest sum of priorities, then the most things, then the largest sum of their volumes. Each copy counts as a thing;
/// what must go along (`must_have`) is in every set. The kit's limits, bag and bands are left aside, its rules of carrying
/// hold among what is there. Ensures: unless the choice is none, check() has no objection to the bundle, and it is one of
/// the kit with just these things; each other thing is told once. Same kit, vessel, seed and effort, same answer, unless
/// `seconds` or `stop` cut in. Requires: problems_of_vessel() has none.
/// Complexity: some tens of searches of a small kit. Source: logic-based Benders cuts, Hooker and Ottosson 2003,
/// Mathematical Programming 96.
Filling fill(const Kit& kit, const std::string& vessel, const SolveOptions& options = {});

/// The answer for people, and as one JSON object ("tuckwright-filling", version 1) with the bundle in it.
std::string fill_text(const Filling& filling);
std::string fill_json(const Filling& filling);

} // namespace tuckwright
