// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "advice/room_proof.hpp"
#include "solve/certificate.hpp"
#include "solve/rests.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

namespace advice {

namespace {

/// An id that no item has.
std::string new_id(const Bundle& bundle)
{
    std::string id = "one-more-thing";
    while (std::any_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& it) { return it.id == id; })) {
        id += "-";
    }
    return id;
}

/// More than any item bears that does not bear everything.
double too_heavy_g(const Bundle& bundle)
{
    double most = 0;
    for (const PlacedItem& item : bundle.items) {
        most = std::max(most, item.bears_g.value_or(0));
    }
    return most + 1;
}

} // namespace

namespace {

bool tapers(const Bundle& bundle, const std::optional<Lodging>& in)
{
    const auto* round = in ? std::get_if<Cylinder>(&bundle.items[in->item].cavities[in->cavity].shape) : nullptr;
    return round != nullptr && round->foot != 0;
}

/// The bundle with the thing in it, its rest told, but not yet how it gets there; nothing where it rests on nothing.
std::optional<Bundle> placed(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid)
{
    Bundle with = bundle;
    with.fits.clear();
    with.plays.clear();
    PlacedItem one;
    one.id = new_id(bundle);
    one.name = "One more thing";
    one.in = in;
    one.solids = {solid};
    one.weight_g = too_heavy_g(bundle);
    with.items.push_back(one);
    const std::size_t item = with.items.size() - 1;
    with.items.back().form = posture(with, item);
    auto rest = rest_of(with, item);
    if (!rest && tapers(bundle, in)) {
        rest = Rest{item, std::nullopt, {}}; // a slanting wall may hold it by its edges; the check will tell
    }
    if (!rest) {
        return std::nullopt;
    }
    with.certificate.rests.push_back(*rest);
    return with;
}

} // namespace

Attempt attempt(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid)
{
    std::optional<Bundle> with = placed(bundle, in, solid);
    if (!with) {
        return {};
    }
    StackingOrder order = stacking_order(*with);
    if (order.steps.empty()) {
        return {std::nullopt, true};
    }
    with->steps = std::move(order.steps);
    certify(*with);
    const auto objections = check(*with);
    if (!objections.empty()) {
        const std::string& rule = objections.front().rule;
        return {std::nullopt, rule == "inside" || rule == "apart" || rule == "girth" || rule == "step"};
    }
    return {std::move(with), false};
}

Prospect prospect(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid)
{
    const auto with = placed(bundle, in, solid);
    return !with                                      ? Prospect::hovers
           : stacking_order(*with).steps.empty() ? Prospect::barred
                                                      : Prospect::good;
}

} // namespace advice

std::optional<Bundle> with_one_more(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid)
{
    return advice::attempt(bundle, in, solid).bundle;
}

} // namespace tuckwright
