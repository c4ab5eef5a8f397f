// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <set>

#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

int roll_layers(double length, double diameter)
{
    require(length > 0 && diameter > 0, "a sheet has a length and a roll a diameter");
    // A hair more length than there is, so that rounding never saves a layer.
    return static_cast<int>(std::ceil(length * (1 + 1e-12) / (std::numbers::pi * diameter)));
}

Item in_form(const Item& item, std::size_t form)
{
    require(form <= item.forms.size(), "an item has that form");
    Item made = item;
    if (form > 0) {
        const Stowage& stowage = item.forms[form - 1];
        made.outside = stowage.outside;
        made.parts = stowage.parts;
        made.inside = stowage.inside;
        made.outside_off = stowage.outside_off;
    }
    made.forms.clear();
    return made;
}

Kit pressed_in(Kit kit)
{
    for (Item& item : kit.items) {
        if (!item.press || item.press->relaxed) {
            continue;
        }
        const Cavity& vessel = *kit.items[item.press->item].inside;
        auto& outside = std::get<Cylinder>(item.outside);
        const double bore = std::get<Cylinder>(vessel.shape).diameter, narrower = outside.diameter - bore;
        item.press->relaxed = outside.diameter;
        outside.diameter = bore;
        if (item.inside) {
            auto& inner = std::get<Cylinder>(item.inside->shape);
            inner.diameter = snap(inner.diameter - narrower);
            double& off = item.inside->off.mm.front();
            off = snap_up(off + item.outside_off.mm.front() + vessel.off.mm.front());
        }
    }
    return kit;
}

namespace {

double even_down(double mm) { return 2 * snap_down(mm / 2); }

const char* fold_words(int times)
{
    return times == 2 ? "in half" : times == 3 ? "in three" : "in four";
}

/// Length folded to a share, width to another: both ways at most in four.
void add_folds(const Sheet& sheet, std::vector<Stowage>& forms)
{
    for (int along = 1; along <= 4; ++along) {
        for (int across = 1; across <= 4; ++across) {
            if (along * across == 1 || along * across > 16) {
                continue;
            }
            const double layers = along * across;
            Stowage made;
            made.outside = Box{snap_up(sheet.length / along), snap_up(sheet.width / across),
                               snap_up(sheet.thickness * layers)};
            const std::string first = along > 1 ? fmt::format("{} along its length", fold_words(along)) : "";
            const std::string second = across > 1 ? fmt::format("{} across its width", fold_words(across)) : "";
            const std::string both = first.empty() ? second : second.empty() ? first : first + " and " + second;
            made.name = "folded " + both;
            made.how = "fold it " + both;
            forms.push_back(std::move(made));
        }
    }
}

/// A tube of the sheet, rolled up `along` its length or its width, with that inner diameter.
Stowage tube(const Sheet& sheet, bool along, double inner, const std::string& name, const std::string& how)
{
    const int layers = roll_layers(along ? sheet.length : sheet.width, inner);
    const double height = along ? sheet.width : sheet.length;
    Stowage made;
    made.outside = Cylinder{snap_up(inner + 2 * layers * sheet.thickness), height};
    made.inside = Cavity{Cylinder{snap_down(inner), height}, Opening::both, 0};
    made.name = fmt::format("{}, {} layer{}", name, layers, layers == 1 ? "" : "s");
    made.how = how;
    made.held = sheet.springy;
    return made;
}

/// Inner diameter of a roll that just fits a bore, layers and all; 0 where none does.
double lining(const Sheet& sheet, bool along, double bore)
{
    const double length = along ? sheet.length : sheet.width;
    for (int layers = 1; layers <= 12; ++layers) {
        const double inner = bore - 2 * layers * sheet.thickness;
        if (inner > 0 && roll_layers(length, inner) <= layers) {
            return snap_down(inner);
        }
    }
    return 0;
}

/// Diameters of what a roll can go round, and of bores that it can line, each once and in rising order.
struct Bores {
    std::set<double> round, lined;
};

Bores bores(const Kit& kit, const Item& self)
{
    Bores found;
    for (const Item& item : kit.items) {
        if (item.id == self.id) {
            continue;
        }
        if (const auto* c = std::get_if<Cylinder>(&item.outside)) {
            found.round.insert(snap_up(c->diameter + 2 * kit.clearance));
        }
        if (item.inside && !item.is_full()) {
            if (const auto* c = std::get_if<Cylinder>(&item.inside->shape)) {
                found.lined.insert(snap_down(c->diameter - 2 * kit.clearance));
            }
        }
    }
    if (kit.bundle.shape == BundleShape::cylinder && kit.bundle.diameter) {
        found.lined.insert(snap_down(*kit.bundle.diameter));
    }
    return found;
}

void add_rolls(const Kit& kit, const Item& item, std::vector<Stowage>& forms)
{
    const Sheet& sheet = *item.sheet;
    const double least = *sheet.roll;
    const Bores all = bores(kit, item);
    std::set<std::pair<bool, double>> done;
    const auto add = [&](bool along, double inner, const std::string& name, const std::string& how) {
        if (inner >= least && done.insert({along, inner}).second) {
            forms.push_back(tube(sheet, along, inner, name, how));
        }
    };
    for (const bool along : {true, false}) {
        if (sheet.length == sheet.width && !along) {
            continue;
        }
        const std::string way = along ? "along its length" : "along its width";
        const double high = along ? sheet.width : sheet.length;
        const std::string roll = fmt::format("roll up its {}", along ? "length" : "width");
        const auto how = [&](double inner) {
            return fmt::format("{} to a tube {:.0f} mm wide inside and {:.0f} mm high", roll, inner, high);
        };
        add(along, snap_up(least), "rolled up tight " + way, how(least));
        for (const double inner : all.round) {
            add(along, inner, "rolled " + way, how(inner));
        }
        for (const double bore : all.lined) {
            const double inner = lining(sheet, along, bore);
            add(along, inner, "rolled " + way, how(inner));
        }
    }
}

/// Sides of cavities' inner squares, largest first.
std::vector<double> inner_squares(const Kit& kit)
{
    std::set<double, std::greater<>> sides;
    for (const Item& item : kit.items) {
        if (item.inside && !item.is_full()) {
            if (const auto* c = std::get_if<Cylinder>(&item.inside->shape)) {
                sides.insert(snap_down((c->diameter - 2 * kit.clearance) / std::numbers::sqrt2 - 1e-5));
            }
        }
    }
    return {sides.begin(), sides.end()};
}

/// A box of the cloth's volume with that thickness and that length.
void add_pad(const Cloth& cloth, double length, double thickness, std::vector<Stowage>& forms)
{
    const double width = snap_up(cloth.volume_ml * 1000 / (length * thickness) * (1 + 1e-12));
    if (std::min({length, width, thickness}) < cloth.thickness || forms.size() >= 16) {
        return;
    }
    Stowage made;
    made.outside = Box{std::max(length, width), std::min(length, width), thickness};
    made.name = fmt::format("as a pad {:.0f} x {:.0f} x {:.0f} mm", std::max(length, width), std::min(length, width),
                            thickness);
    made.how = fmt::format("fold or press it to {:.0f} x {:.0f} x {:.0f} mm", std::max(length, width),
                           std::min(length, width), thickness);
    forms.push_back(std::move(made));
}

void add_pads(const Kit& kit, const Cloth& cloth, std::vector<Stowage>& forms)
{
    const double volume = cloth.volume_ml * 1000, cube = std::cbrt(volume);
    for (const double side : inner_squares(kit)) {
        const double thickness = snap_up(volume / (side * side) * (1 + 1e-12));
        if (thickness >= cloth.thickness && thickness <= side) {
            add_pad(cloth, side, thickness, forms);
        }
    }
    for (const double thickness : {cloth.thickness, 2 * cloth.thickness, 0.35 * cube, 0.6 * cube, cube}) {
        for (const double ratio : {1.0, 2.0, 4.0}) {
            const double length = snap_up(std::sqrt(ratio * volume / thickness));
            add_pad(cloth, length, snap_up(thickness), forms);
        }
    }
}

/// An empty pouch laid flat, and folded as a sheet of both its layers.
void add_folded(const Pouch& pouch, const Shape& flat, std::vector<Stowage>& forms)
{
    const auto& box = std::get<Box>(flat);
    Stowage made;
    made.outside = flat;
    made.name = "empty, laid flat";
    made.how = "lay it flat, empty";
    forms.push_back(made);
    std::vector<Stowage> folds;
    add_folds(Sheet{box.length, box.width, 2 * pouch.thickness, {}, true}, folds);
    for (Stowage& fold : folds) {
        fold.name = "empty, " + fold.name;
        fold.how += ", empty";
        forms.push_back(std::move(fold));
    }
}

/// Plans of a round pouch and of rectangular ones, as far round as the girth, and that high.
void add_plans(const Pouch& pouch, double height, std::vector<Stowage>& forms)
{
    const double girth = pouch.girth, high = even_down(height);
    const auto add = [&](const Shape& cavity) {
        if (auto form = filled_out(pouch, cavity)) {
            forms.push_back(*form);
        }
    };
    add(Cylinder{snap_down(girth * 113 / 355), high});
    for (const double ratio : {1.0, 1.5, 2.0, 3.0}) {
        add(Box{even_down(girth / 2 * ratio / (1 + ratio)), even_down(girth / 2 / (1 + ratio)), high});
    }
}

/// A pouch that nothing has to go into is folded, for filled out it would save no room. Of several that are alike some
/// may stay empty.
void add_pouch(const Kit& kit, Item& item)
{
    std::vector<Stowage> forms;
    const bool holds = must_hold_something(kit, item.id);
    for (const double high : {1.0, 0.5}) {
        if (holds) {
            add_plans(*item.pouch, high * item.pouch->length, forms);
        }
    }
    if (!holds || item.count > 1) {
        add_folded(*item.pouch, item.outside, forms);
    }
    add_pouch_forms(item, std::move(forms));
}

} // namespace

std::optional<Stowage> filled_out(const Pouch& pouch, const Shape& cavity)
{
    // pi is less than 355/113. Nanometres of a girth have ten digits, so that the products are exact.
    const auto* round = std::get_if<Cylinder>(&cavity);
    const auto* box = std::get_if<Box>(&cavity);
    const auto girth = to_nanometres(pouch.girth);
    const bool goes_round = round != nullptr ? 355 * to_nanometres(round->diameter) <= 113 * girth
                                             : 2 * (to_nanometres(box->length) + to_nanometres(box->width)) <= girth;
    if (!goes_round || height_of(cavity) > pouch.length) {
        return std::nullopt;
    }
    const double walls = 2 * pouch.thickness;
    Stowage made;
    made.inside = Cavity{cavity, Opening::closed, pouch.thickness};
    made.how = "draw it shut";
    if (round != nullptr) {
        made.outside = Cylinder{snap(round->diameter + walls), snap(round->height + walls)};
        made.name = fmt::format("filled out {:.0f} mm across, {:.0f} mm high", round->diameter, round->height);
    } else {
        made.outside = Box{snap(box->length + walls), snap(box->width + walls), snap(box->height + walls)};
        made.name = fmt::format("filled out {:.0f} x {:.0f} mm, {:.0f} mm high", box->length, box->width, box->height);
    }
    return made;
}

bool must_hold_something(const Kit& kit, const std::string& id)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(),
                       [&](const CarryRule& rule) { return rule.keep == Keep::within && rule.second == id; });
}

void add_pouch_forms(Item& pouch, std::vector<Stowage> forms)
{
    pouch.forms.insert(pouch.forms.begin(), forms.begin(), forms.end());
    require(!pouch.forms.empty(), "a pouch has a form");
    pouch.outside = pouch.forms.front().outside;
    pouch.inside = pouch.forms.front().inside;
}

Kit with_stowages(Kit kit)
{
    const Kit plain = kit;
    for (std::size_t k = 0; k < kit.items.size(); ++k) {
        Item& item = kit.items[k];
        if (item.sheet && item.sheet->folds) {
            add_folds(*item.sheet, item.forms);
        }
        if (item.sheet && item.sheet->roll) {
            add_rolls(plain, item, item.forms);
        }
        if (item.cloth) {
            add_pads(plain, *item.cloth, item.forms);
        }
        if (item.pouch) {
            add_pouch(plain, item);
        }
    }
    return kit;
}

} // namespace tuckwright
