// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <vector>

#include "support/handmade_bundles.hpp"
#include "tuckwright/check_code.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;

namespace {

/// CRC-32 of ITU-T V.42, bit by bit.
std::uint32_t crc_32(const std::string& bytes)
{
    std::uint32_t crc = 0xFFFFFFFFU;
    for (const char c : bytes) {
        crc ^= static_cast<unsigned char>(c);
        for (int bit = 0; bit < 8; ++bit) {
            crc = crc >> 1U ^ (crc % 2 != 0 ? 0xEDB88320U : 0U);
        }
    }
    return ~crc;
}

std::uint64_t number_of(const std::string& code)
{
    const std::string digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    std::uint64_t number = 0;
    for (const char c : code) {
        if (c != '-') {
            number = 32 * number + digits.find(c);
        }
    }
    return number;
}

} // namespace

TEST_CASE("the code is the CRC-32 of what decides how the bundle is put together")
{
    // Source: catalogues of CRC algorithms give CBF43926 as the check value of CRC-32/ISO-HDLC (from memory).
    REQUIRE(crc_32("123456789") == 0xCBF43926U);
    auto tin = handmade::item("tin", handmade::box(30, 20, 10, {15, 10, 5}));
    tin.weight_g = 12.5;
    auto one = handmade::bundle("Figs", Box{30, 20, 10}, {tin});
    handmade::step(one, 0);
    const std::string lines = "4:Figs\n30000000 20000000 10000000 \n3:tin\n1\n0:\n12500 mg\n0\n0\n"
                              "30000000 20000000 10000000 \n15000000 10000000 5000000 \n1 0 0 0\n0\n";
    CHECK(number_of(check_code(one)) == crc_32(lines));
}

TEST_CASE("every bundle has its code, which its saved form shares")
{
    std::set<std::string> codes;
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = sample.make();
        const std::string code = check_code(bundle);
        CAPTURE(sample.name, code);
        CHECK(code.size() == 8);
        CHECK(code[4] == '-');
        CHECK(codes.insert(code).second);
        const auto read = from_json(to_json(bundle), "saved");
        REQUIRE(read);
        CHECK(check_code(*read) == code);
    }
}

TEST_CASE("whatever is packed otherwise has another code")
{
    const std::vector<std::pair<std::string, std::function<void(Bundle&)>>> changes{
        {"kit", [](Bundle& b) { b.kit += "s"; }},
        {"envelope", [](Bundle& b) { std::get<Cylinder>(b.envelope).height += 1e-6; }},
        {"place", [](Bundle& b) { b.items[1].solids[0].pose.center.x += 1e-6; }},
        {"turn", [](Bundle& b) { b.items[1].solids[0].pose.turn = {2, 0, 0, 1}; }},
        {"size", [](Bundle& b) { std::get<Cylinder>(b.items[1].solids[0].shape).diameter -= 1e-6; }},
        {"shape", [](Bundle& b) { b.items[1].solids[0].shape = Box{80, 80, 87}; }},
        {"id", [](Bundle& b) { b.items[1].id = "mug"; }},
        {"copy", [](Bundle& b) { b.items[1].copy = 2; }},
        {"form", [](Bundle& b) { b.items[1].stowed = "rolled"; }},
        {"weight", [](Bundle& b) { b.items[1].weight_g += 0.001; }},
        {"contents", [](Bundle& b) { b.items[1].contents_g += 1; }},
        {"container", [](Bundle& b) { b.items[1].in.reset(); }},
        {"lid", [](Bundle& b) { b.items[2].closes.reset(); }},
        {"order", [](Bundle& b) { std::swap(b.steps[0], b.steps[2]); }},
        {"bag", [](Bundle& b) { b.bag = Bag{"bag", "", 10, 500, 300, 0.1}; }},
        {"band", [](Bundle& b) { b.bands.push_back({"strap", "", 5, 450}); }},
    };
    std::set<std::string> codes{check_code(handmade::cup_in_lidded_pot())};
    for (const auto& [what, change] : changes) {
        Bundle bundle = handmade::cup_in_lidded_pot();
        change(bundle);
        CAPTURE(what);
        CHECK(codes.insert(check_code(bundle)).second);
    }
}

TEST_CASE("a code is taken however it was typed, and what is none is not")
{
    CHECK(code_as_written("7K3F-Q2W") == "7K3F-Q2W");
    CHECK(code_as_written(" 7k3fq2w ") == "7K3F-Q2W");
    CHECK(code_as_written("7-K3 fq2-w") == "7K3F-Q2W");
    CHECK(code_as_written("OiLo-000") == "0110-000");
    for (const char* none : {"", "-", "7K3F", "7K3F-Q2", "7K3F-Q2WX", "7K3F-Q2U", "7K3F_Q2W", "7K3F-Q2\xC3\x84"}) {
        CAPTURE(none);
        CHECK_FALSE(code_as_written(none));
    }
}
