// SPDX-License-Identifier: GPL-3.0-or-later
/// The room that is left in a packed bundle: what else would go into it, so that one can shop for it.
#pragma once
#include <array>
#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright {

/// Thinner things, or smaller ones, are of no use to a person who shops.
inline constexpr double worth_telling_mm = 8, worth_telling_ml = 5;

/// How one more thing would lie, by the upright of what it goes into: a cylinder that stands, a cylinder that lies, a box
/// with a face down. Lying cylinders and boxes are turned freely about the upright.
enum class Posing { standing, lying, box };
inline constexpr std::array<Posing, 3> posings{Posing::standing, Posing::lying, Posing::box};

/// "standing", "lying", "box".
const char* to_string(Posing posing);

/// One more thing that was proved to fit, where nothing else is moved for good.
struct OneMore {
    Solid solid;            ///< mm on the grid, in the bundle's frame; a box is as high as its own z
    double stands_out = 0;  ///< mm beyond the rim of the open vessel that it goes into
    std::string step;       ///< how it goes in, in words
};

/// What would still go into one place: a cavity, or the bundle beside and on top of everything.
struct RoomLeft {
    std::optional<Lodging> in;                      ///< nothing: directly in the bundle
    /// Of each posing, by volume: of those at least `worth_telling_mm` thick, or else of the thinner ones; nothing where
    /// none was found.
    std::array<std::optional<OneMore>, 3> largest;

    /// One that stands too, of other proportions: the largest found that is half again as wide, or half again as high.
    std::optional<OneMore> other;

    const std::optional<OneMore>& of(Posing posing) const { return largest[static_cast<std::size_t>(posing)]; }
};

struct RoomOptions {
    Effort effort = Effort::normal;            ///< how many places to start from
    unsigned threads = 0;                      ///< 0: as many as the machine has; never changes the answer
    const std::atomic<bool>* stop = nullptr;   ///< set it to stop early
};

struct RoomAnswer {
    std::vector<RoomLeft> rooms;  ///< the bundle first, then the cavities in the order of the items
    bool complete = true;         ///< false: stopped before all had been looked at
};

/// For the bundle and for each cavity that is not filled by contents, the largest cylinder that would stand, the largest
/// that would lie and the largest box that were found to go in, each alone, while all others stay where they are and the
/// bundle grows no larger. "Go in" means that the bundle with it, made by with_one_more(), has no objection of check(): it
/// is inside all its containers with the clearance, apart from everything, rests on something, lies on nothing that may
/// bear nothing or little, and there is an order in which it all goes in by hand. Out of an open cavity it may stand out.
/// Requires: a bundle to which check() has no objection. Ensures: the same bundle and effort give the same answer, unless
/// stopped; where its place is known, nothing larger by more than a thousandth is near it; a larger one may exist
/// elsewhere. Nothing thinner than a millimetre is told.
/// Complexity: some thousand linear programs of six unknowns for each cavity, and a few exact checks.
RoomAnswer room_left(const Bundle& bundle, const RoomOptions& options = {});

/// The bundle with one more thing where it lies, its rest, its step and a new certificate: proved, or nothing. It weighs
/// more than any item that bears a limited weight may bear, for nobody knows what it will be. Its rules of carrying are
/// nobody's. Requires: a bundle to which check() has no objection; a lodging of it. Ensures: the one more thing is the
/// last item; check() has no objection.
std::optional<Bundle> with_one_more(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid);

/// The answer for a person who shops: per place the largest of each kind, without those thinner than `worth_telling_mm`
/// or smaller than `worth_telling_ml`. Lengths are rounded down. Requires: an answer for this bundle.
std::string room_text(const Bundle& bundle, const RoomAnswer& answer);
/// All of it as one JSON object ("tuckwright-room", version 1), ending in a newline. Requires: the same.
std::string room_json(const Bundle& bundle, const RoomAnswer& answer);

} // namespace tuckwright
