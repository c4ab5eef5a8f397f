// SPDX-License-Identifier: GPL-3.0-or-later
/// The sample kits at the default effort.
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/footing.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

TEST_CASE("every sample kit packs into less than its things take up one by one, and nothing hangs in the air")
{
    std::set<std::filesystem::path> files; // in an order that no file system changes
    for (const auto& file : std::filesystem::directory_iterator(TUCKWRIGHT_SOURCE_DIR "/kits")) {
        if (file.path().extension() == ".yaml") {
            files.insert(file.path());
        }
    }
    int packed = 0;
    for (const auto& file : files) {
        if (packed >= count(100, 1)) {
            break;
        }
        const auto kit = read_kit_file(file.string());
        REQUIRE(kit.ok());
        INFO(kit->name);
        const Bundle bundle = solved(*kit, slow_build ? Effort::quick : Effort::normal);
        REQUIRE(has_bundle(bundle.status));
        double outsides = 0;
        for (const Item& item : kit->items) {
            outsides += item.count * volume_ml(item.outside);
        }
        // Quick effort, all that a slow build has time for, promises neither.
        CHECK((slow_build || volume_ml(bundle.envelope) < outsides));
        for (const Footing& footing : footings(bundle)) {
            CHECK((slow_build || footing.carried));
        }
        ++packed;
    }
    CHECK(packed >= count(5, 1));
}
