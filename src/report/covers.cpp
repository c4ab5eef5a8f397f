// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/covers.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

#include "report/json_items.hpp"
#include "report/words.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::report {

namespace {

using nlohmann::ordered_json;

constexpr std::size_t most_bands = 500;

/// As people call it: the name up to a comma.
template <class Cover> std::string spoken(const Cover& cover)
{
    const std::string name = cover.name.substr(0, cover.name.find(','));
    return name.empty() ? cover.id : name;
}

template <class Cover> std::string listed(const Cover& cover)
{
    return cover.name == cover.id || cover.name.empty() ? cover.id : fmt::format("{} ({})", cover.name, cover.id);
}

template <class Cover> ordered_json head(const Cover& cover)
{
    return {{"id", cover.id}, {"name", cover.name}, {"weight_g", cover.weight_g}, {"girth_mm", snap(cover.girth)}};
}

template <class Cover> void read_head(const Node& node, Cover& cover)
{
    cover.id = node.text("id");
    cover.name = node.text("name");
    cover.weight_g = node.number("weight_g", largest_weight);
    cover.girth = node.length("girth_mm");
    node.text("text"); // what it says is seen last, for it follows from the rest
}

double girth_of_all(const Bundle& bundle)
{
    std::vector<Solid> solids;
    for (const PlacedItem& item : bundle.items) {
        solids.insert(solids.end(), item.solids.begin(), item.solids.end());
    }
    return outline_girth(solids);
}

std::string step_of(const Bundle& bundle, const Band& band)
{
    return band.over.empty() ? "Put " + spoken(band) + " level round it all."
                             : lid_band_step(bundle, band);
}

/// The bands that go round everything.
std::vector<Band> level_bands(const Bundle& bundle)
{
    std::vector<Band> found;
    std::copy_if(bundle.bands.begin(), bundle.bands.end(), std::back_inserter(found),
                 [](const Band& band) { return band.over.empty(); });
    return found;
}

/// A part on the bands that hold a lid shut; empty without them.
std::string held_text(const Bundle& bundle)
{
    std::string text;
    for (const Band& band : bundle.bands) {
        if (!band.over.empty()) {
            std::string over = lid_band_step(bundle, band);
            over = over.substr(over.rfind(" over "));
            over.pop_back(); // the full stop
            text += wrapped(
                "  ", fmt::format("{}, {} round at its longest,{}", listed(band), length_in_words(band.girth), over));
        }
    }
    return text.empty() ? text : "\nHeld shut:\n" + text;
}

} // namespace

std::vector<std::string> cover_steps(const Bundle& bundle)
{
    std::vector<std::string> steps;
    const auto bands = level_bands(bundle);
    for (const Band& band : bands) {
        steps.push_back(step_of(bundle, band));
    }
    if (bundle.bag) {
        steps.push_back("Pull " + spoken(*bundle.bag) + " over it all, and close it" +
                        (bands.empty() ? ", or build it all in there from the start." : "."));
    }
    return steps;
}

std::string first_cover_off(const Bundle& bundle)
{
    if (bundle.bag) {
        return "pull off " + spoken(*bundle.bag);
    }
    const auto bands = level_bands(bundle);
    return bands.empty() ? "" : "take off " + spoken(bands.back());
}

std::vector<std::string> bands_over(const Bundle& bundle, std::size_t lid)
{
    std::vector<std::string> names;
    for (const Band& band : bundle.bands) {
        if (band.over == bundle.items[lid].id) {
            names.push_back(spoken(band));
        }
    }
    return names;
}

std::vector<std::string> covers_from_outside(const Bundle& bundle)
{
    std::vector<std::string> order;
    if (bundle.bag) {
        order.push_back(spoken(*bundle.bag));
    }
    const auto bands = level_bands(bundle);
    for (auto band = bands.rbegin(); band != bands.rend(); ++band) {
        order.push_back(spoken(*band));
    }
    return order;
}

std::string covers_text(const Bundle& bundle)
{
    const auto bands = level_bands(bundle);
    std::string text = held_text(bundle);
    if (!bundle.bag && bands.empty()) {
        return text;
    }
    text += "\nRound it all:\n";
    for (const Band& band : bands) {
        text += wrapped("  ", fmt::format("{}, {} round at its longest", listed(band), length_in_words(band.girth)));
    }
    const std::string round = length_in_words(girth_of_all(bundle));
    if (!bundle.bag) {
        return text + wrapped("  ", fmt::format("What {} round is {} round.", bands.size() > 1 ? "they go" : "it goes",
                                                round));
    }
    const Bag& bag = *bundle.bag;
    text += wrapped("  ", fmt::format("{}, {} round inside, closes over a bundle up to {} high", listed(bag), length_in_words(bag.girth),
                                      length_in_words(bag.length)));
    return text + wrapped("  ", fmt::format("In the bag: about {}, {} round. The sizes at the top are those "
                                            "of the bag round it, {} thick on every side.",
                                            envelope_in_words(bundle.envelope), round,
                                            length_in_words(bag.thickness)));
}

ordered_json bag_part(const Bundle& bundle)
{
    if (!has_bundle(bundle.status) || !bundle.bag) {
        return nullptr;
    }
    ordered_json part = head(*bundle.bag);
    part["length_mm"] = snap(bundle.bag->length);
    part["thickness_mm"] = snap(bundle.bag->thickness);
    part["text"] = cover_steps(bundle).back();
    return part;
}

ordered_json bands_part(const Bundle& bundle)
{
    ordered_json parts = ordered_json::array();
    for (const Band& band : bundle.bands) {
        if (!has_bundle(bundle.status)) {
            break;
        }
        parts.push_back(head(band));
        if (!band.over.empty()) {
            parts.back()["over"] = band.over;
        }
        parts.back()["text"] = step_of(bundle, band);
    }
    return parts;
}

void read_covers(const Node& root, Bundle& bundle)
{
    const bool packed = has_bundle(bundle.status);
    if (const auto node = root.field("bag"); node && !node->null()) {
        if (!packed) {
            node->fault("must be null where the status says that there is no bundle");
        } else if (node->object()) {
            Bag bag;
            report::read_head(*node, bag);
            bag.length = node->length("length_mm");
            bag.thickness = node->length("thickness_mm");
            bundle.bag = bag;
        }
    }
    const auto bands = root.list("bands", 0, packed ? most_bands : 0);
    for (const Node& node : bands) {
        Band band;
        if (node.object()) {
            report::read_head(node, band);
            const auto over = node.has("over") ? node.field("over") : std::nullopt;
            band.over = over ? over->text() : "";
            if (over && band.over.empty()) {
                over->fault("must name the lid that the band holds", "leave it out for a band round everything");
            }
        }
        bundle.bands.push_back(band);
    }
}

bool check_cover_steps(const Node& root, const Bundle& bundle)
{
    bool as_today = true;
    const auto check = [&](const Node& part, const std::string& called, const std::string& today) {
        const auto node = part.field("text");
        const std::string text = node ? node->text() : today;
        if (text.find(called) == std::string::npos) {
            node->fault(fmt::format("is \"{}\", but it is about {}, which it does not name", text, called));
        }
        as_today &= text == today;
    };
    const auto bands = root.list("bands", 0, most_bands);
    for (std::size_t k = 0; k < bands.size(); ++k) {
        check(bands[k], spoken(bundle.bands[k]), step_of(bundle, bundle.bands[k]));
    }
    if (const auto bag = root.field("bag"); bag && bundle.bag) {
        check(*bag, spoken(*bundle.bag), cover_steps(bundle).back());
    }
    return as_today;
}

} // namespace tuckwright::report
