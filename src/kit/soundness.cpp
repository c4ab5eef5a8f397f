// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/soundness.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "kit/kinds.hpp"
#include "kit/words.hpp"
#include "tuckwright/kit_in_code.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr double grain = 2.1e-6; ///< mm: two roundings to the grid

bool is_size(double mm) { return std::isfinite(mm) && mm > 0; }
bool is_amount(double value) { return std::isfinite(value) && value >= 0; }

bool is_shape(const Shape& shape)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return is_size(c->diameter) && is_size(c->height) && is_amount(c->foot) && c->foot <= c->diameter;
    }
    const auto& b = std::get<Box>(shape);
    return is_size(b.length) && is_size(b.width) && is_size(b.height);
}

/// Diameter of a cylinder at a height above its bottom.
double diameter_at(const Cylinder& c, double z) { return foot_of(c) + (c.diameter - foot_of(c)) * z / c.height; }

/// Whether the plan of one shape, at its foot and its top, lies within that of another, whose bottom is `floor` lower.
bool is_within(const Shape& inner, const Shape& outer, double floor)
{
    const auto* in = std::get_if<Cylinder>(&inner);
    const auto* out = std::get_if<Cylinder>(&outer);
    if (in != nullptr && out != nullptr) {
        return foot_of(*in) < diameter_at(*out, floor) &&
               in->diameter < diameter_at(*out, std::min(out->height, floor + in->height));
    }
    if (in != nullptr) {
        const auto& box = std::get<Box>(outer);
        return in->diameter < std::min(box.length, box.width);
    }
    const auto& room = std::get<Box>(inner);
    if (out != nullptr) {
        return std::hypot(room.length, room.width) < diameter_at(*out, floor);
    }
    const auto& box = std::get<Box>(outer);
    return room.length < box.length && room.width < box.width;
}

class Soundness {
public:
    explicit Soundness(const Kit& kit) : kit_(kit) {}

    std::vector<Problem> all()
    {
        if (kit_.items.empty()) {
            add("the kit has no items", "add one");
        }
        if (!is_amount(kit_.clearance)) {
            add("the kit's clearance is no length", "give 0 or more");
        }
        limits();
        for (const Item& item : kit_.items) {
            identity(item);
            sizes(item, item.outside, item.parts, item.inside, "");
            for (const Stowage& form : item.forms) {
                sizes(item, form.outside, form.parts, form.inside, "form '" + form.name + "': ");
            }
            soft(item);
            handling(item);
            closure(item);
        }
        rules();
        return std::move(problems_);
    }

    /// What would leak, and whether the kinds have brought their rules.
    std::vector<Problem> unsafe()
    {
        for (std::size_t k = 0; k < kit_.items.size(); ++k) {
            liquid(k);
        }
        const Kit ruled = with_usual_rules(kit_);
        if (kit_.waived.empty() && ruled.rules.size() > kit_.rules.size()) {
            const CarryRule& first = ruled.rules[kit_.rules.size()];
            add("the kinds of " + reading::in_quotes(first.first) + " and " + reading::in_quotes(first.second) +
                    " ask for a rule that is not there: " + first.why,
                "let with_usual_rules() add the rules, or say in 'waived' why not");
        }
        return std::move(problems_);
    }

private:
    void add(std::string what, std::string remedy)
    {
        problems_.push_back({kit_.name, 0, 0, std::move(what), std::move(remedy)});
    }
    void add(const Item& item, const std::string& what, std::string remedy)
    {
        add("item " + reading::in_quotes(item.id) + ": " + what, std::move(remedy));
    }

    bool has(const std::string& id) const
    {
        return std::any_of(kit_.items.begin(), kit_.items.end(), [&](const Item& item) { return item.id == id; });
    }

    void limits()
    {
        const BundleRule& b = kit_.bundle;
        for (const auto& limit : {b.diameter, b.length, b.width, b.height}) {
            if (limit && !is_size(*limit)) {
                add("a limit of the bundle is no length", "give millimetres, more than 0, or none");
            }
        }
    }

    void identity(const Item& item)
    {
        if (item.id.empty()) {
            add("an item has no id", "give each item an id of its own");
        } else if (!ids_.insert(item.id).second) {
            add(item, "another item has the same id", "give each item an id of its own, or count copies in 'count'");
        }
        if (item.name.empty()) {
            add(item, "it has no name", "name it, or let with_usual_rules() take its id");
        }
        if (item.count < 1) {
            add(item, fmt::format("count is {}", item.count), "count at least one copy, or leave the item out");
        }
        if (!is_amount(item.weight_g)) {
            add(item, "its weight is no weight", "give grams, 0 or more");
        }
    }

    void sizes(const Item& item, const Shape& outside, const std::vector<Part>& parts,
               const std::optional<Cavity>& inside, const std::string& form)
    {
        if (!is_shape(outside)) {
            add(item, form + "a side of its outside is no length, or its foot is wider than its top",
                "give millimetres, more than 0");
            return;
        }
        for (const Part& part : parts) {
            if (!is_shape(part.shape) || !std::isfinite(part.at.x + part.at.y + part.at.z)) {
                add(item, form + "a part's size or place is no length", "give millimetres, sizes more than 0");
            }
        }
        if (inside) {
            cavity(item, outside, *inside, form);
        }
    }

    void cavity(const Item& item, const Shape& outside, const Cavity& inside, const std::string& form)
    {
        if (!is_shape(inside.shape) || (inside.neck && !is_amount(height_of(*inside.neck))) ||
            !is_amount(inside.floor)) {
            add(item, form + "a side of its cavity is no length",
                "give millimetres, more than 0; cavity_of() makes one of wall and base");
            return;
        }
        if (!is_within(inside.shape, outside, inside.floor)) {
            add(item, form + "its cavity is not narrower than the outside, at the top and at the floor",
                "take both walls off; cavity_of() does, tapering ones too");
        }
        const double top = inside.floor + height_of(inside.shape) + (inside.neck ? height_of(*inside.neck) : 0);
        const double rim = height_of(outside);
        const bool reaches = inside.opens == Opening::closed ? top <= rim + grain : std::abs(top - rim) <= grain;
        if (!reaches) {
            add(item,
                fmt::format("{}its cavity ends {:g} mm above the item's bottom, and the item is {:g} mm high", form,
                            top, rim),
                inside.opens == Opening::closed ? "let floor, cavity and neck be no higher than the item"
                                                : "let floor, cavity and neck be as high as the item together");
        }
    }

    void soft(const Item& item)
    {
        if (const auto& cloth = item.cloth) {
            const auto* pad = std::get_if<Box>(&item.outside);
            if (!is_size(cloth->volume_ml) || !is_amount(cloth->thickness) || pad == nullptr ||
                volume_ml(item.outside) < cloth->volume_ml * (1 - 1e-9)) {
                add(item, "a cloth's volume or thickness is no size, or its outside no box of that volume",
                    "give ml and mm, and let with_usual_rules() make the outside of a Shape() left as it is");
            }
        }
        if (item.sheet &&
            !(is_size(item.sheet->length) && is_size(item.sheet->width) && is_size(item.sheet->thickness))) {
            add(item, "a side of its sheet is no length", "give millimetres, more than 0");
        }
        if (item.pouch &&
            !(is_size(item.pouch->girth) && is_size(item.pouch->length) && is_size(item.pouch->thickness))) {
            add(item, "its pouch's girth, length or thickness is no length", "give millimetres, more than 0");
        }
    }

    void liquid(std::size_t index)
    {
        const Item& item = kit_.items[index];
        if (!reading::is_of_kind(item, Kind::liquid)) {
            return;
        }
        if (!item.upright) {
            add(item, "it holds a liquid and need not stand upright", "set 'upright', or let with_usual_rules() do so");
        }
        const bool has_lid = std::any_of(kit_.items.begin(), kit_.items.end(),
                                         [&](const Item& lid) { return lid.closes && lid.closes->item == index; });
        if (item.inside && (item.inside->opens == Opening::both || (item.inside->opens == Opening::top && !has_lid))) {
            add(item, "it holds a liquid, but is open",
                "let its cavity be Opening::closed, or give it a lid that closes it");
        }
    }

    void handling(const Item& item)
    {
        if (item.contents && !is_amount(item.contents->weight_g)) {
            add(item, "the weight of its contents is no weight", "give grams, 0 or more");
        }
        if (item.bears_g && !is_amount(*item.bears_g)) {
            add(item, "what it bears is no weight", "give grams, 0 or more");
        }
        if (item.press && (item.press->item >= kit_.items.size() || &kit_.items[item.press->item] == &item ||
                           !kit_.items[item.press->item].inside || !is_amount(item.press->gives))) {
            add(item, "it is pressed into an item that is none or has no cavity",
                "name the index of a vessel in Kit::items");
        }
    }

    void closure(const Item& item)
    {
        if (!item.closes) {
            return;
        }
        const Closure& lid = *item.closes;
        const bool is_there = lid.item < kit_.items.size() && &kit_.items[lid.item] != &item;
        if (!is_there || kit_.items[lid.item].closes || !kit_.items[lid.item].inside ||
            kit_.items[lid.item].inside->opens != Opening::top) {
            add(item, "it closes what is no open vessel",
                "name the index in Kit::items of a vessel that is open at the top");
        }
        if (!is_amount(lid.adds) || !is_amount(lid.intrudes)) {
            add(item, "what its lid adds or takes is no length", "give millimetres, 0 or more");
        }
    }

    void rules()
    {
        for (const CarryRule& rule : kit_.rules) {
            if (!has(rule.first) || !has(rule.second) || rule.first == rule.second) {
                add("a rule is about " + reading::in_quotes(rule.first) + " and " + reading::in_quotes(rule.second) +
                        ", which are not two items of the kit",
                    "name the ids of two items");
            }
        }
        for (const Band& band : kit_.bands) {
            if (!is_size(band.girth) || (!band.over.empty() && !has(band.over))) {
                add("band " + reading::in_quotes(band.id) + " has no girth, or holds a lid that is no item",
                    "give millimetres, and a lid's id");
            }
        }
        if (kit_.bag && (!is_size(kit_.bag->girth) || !is_size(kit_.bag->length) || !is_amount(kit_.bag->thickness))) {
            add("the bag's girth, length or thickness is no length", "give millimetres");
        }
    }

    const Kit& kit_;
    std::set<std::string> ids_;
    std::vector<Problem> problems_;
};

} // namespace

std::vector<Problem> reading::structural_problems(const Kit& kit) { return Soundness(kit).all(); }

std::vector<Problem> problems_of(const Kit& kit)
{
    std::vector<Problem> found = reading::structural_problems(kit);
    return found.empty() ? Soundness(kit).unsafe() : found;
}

} // namespace tuckwright
