// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/replay.hpp"

#include <catch2/catch.hpp>

#include "support/stacking_samples.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;
using stacking::Replay;
using Items = std::vector<std::size_t>;

namespace
{
constexpr std::size_t lid = 0, pot = 1, ring = 2, mug = 3;
}

TEST_CASE("what moves with an item is what it holds so far and its shut lid")
{
    const Bundle bundle = stacking_samples::mug_in_ring_in_lidded_pot();
    Replay replay(bundle);
    CHECK(replay.group(pot) == Items{pot});
    replay.place(mug);
    CHECK(replay.group(ring) == Items{ring, mug});
    CHECK(replay.group(pot) == Items{pot, mug});
    replay.place(ring);
    replay.place(lid);
    CHECK(replay.group(pot) == Items{lid, pot, ring, mug});
    CHECK(replay.group(lid) == Items{lid});
    CHECK(replay.group(mug) == Items{mug});
}

TEST_CASE("a lid meets its vessel and what is in it; contents do not meet the walls they lie between")
{
    const Bundle bundle = stacking_samples::mug_in_ring_in_lidded_pot();
    Replay replay(bundle);
    CHECK(replay.obstacles(mug).empty());
    replay.place(mug);
    CHECK(replay.obstacles(ring).empty());
    replay.place(ring);
    CHECK(replay.obstacles(lid) == Items{pot, ring, mug});
    replay.place(lid);
    CHECK(replay.obstacles(pot).empty());
}

TEST_CASE("a vessel that is still on the table does not meet what lies in the bundle")
{
    auto bundle = stacking_samples::mug_in_ring_in_lidded_pot();
    bundle.items.push_back(handmade::item("tin", handmade::box(10, 10, 10, {90, 0, 5})));
    Replay replay(bundle);
    constexpr std::size_t tin = 4;
    replay.place(tin);
    CHECK(replay.obstacles(mug).empty());
    CHECK(replay.obstacles(pot) == Items{tin});
    // In a vessel that has been placed already, what comes later meets all that stands round it.
    replay.place(pot);
    CHECK(replay.obstacles(ring) == Items{tin});
    replay.place(ring);
    CHECK(replay.obstacles(mug) == Items{tin});
    CHECK(replay.obstacles(lid) == Items{pot, ring, tin});
}

TEST_CASE("an item within itself, or in an item that is not there, is a broken contract")
{
    auto bundle = stacking_samples::tin_under_board();
    bundle.items[0].in = Lodging{1, 0};
    bundle.items[1].in = Lodging{0, 0};
    CHECK_THROWS_AS(stacking::is_within(bundle, 0, 2), ContractBroken);
    bundle.items[1].in = Lodging{7, 0};
    CHECK_THROWS_AS(Replay(bundle), ContractBroken);
    bundle.items[1].in.reset();
    bundle.items[0].in.reset();
    bundle.items[0].closes = 7;
    CHECK_THROWS_AS(Replay(bundle), ContractBroken);
}
