// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/level_model.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "nesting/kit_scene.hpp"
#include "packing/leaning.hpp"
#include "tuckwright/stowage.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Half sides of slabs of a lying cylinder, in radii: as wide and as high as a step of stairs in its round outline.
struct Step {
    double half_width, half_height;
};
constexpr std::array<Step, 3> stairs{{{0.8, 0.6}, {0.435, 0.9}, {0, 1}}}; // on or within the circle

bool is_plain(const Item& item)
{
    return item.forms.empty() && !item.sheet && !item.cloth && !item.pouch && !item.press && !item.closes;
}

/// What counts with nothing but its volume counts with the least of it.
double least_volume(const Kit& kit, const Item& item)
{
    if (item.pouch) {
        return 0; // in the model it may be as small as its contents
    }
    if (item.cloth) {
        return item.cloth->volume_ml * 1000;
    }
    if (item.closes) {
        return volume_ml(lid_plate(item, kit.items[item.closes->item]).shape) * 1000;
    }
    double least = volume_ml(item.outside) * 1000;
    for (const Stowage& form : item.forms) {
        least = std::min(least, volume_ml(form.outside) * 1000);
    }
    return least;
}

/// Of the cavity with the clearance, in whatever form.
double largest_cavity(const Item& item)
{
    double most = 0;
    for (std::size_t form = 0; form <= item.forms.size(); ++form) {
        if (const auto inside = in_form(item, form).inside) {
            most = std::max(most, (volume_ml(inside->shape) + (inside->neck ? volume_ml(*inside->neck) : 0)) * 1000);
        }
    }
    return most;
}

class Builder {
public:
    explicit Builder(const Kit& kit) : kit_(with_stowages(kit))
    {
        scene_ = kit_scene(kit_, std::vector<bool>(lids(kit_).size(), false));
        model_.round = kit_.bundle.shape == BundleShape::cylinder;
        model_.cells.emplace_back();
        for (std::size_t k = 0; k < scene_.origins.size(); ++k) {
            add_cell(static_cast<int>(k));
        }
        for (std::size_t k = 0; k < scene_.origins.size(); ++k) {
            add_body(static_cast<int>(k));
        }
        pass_on_vagueness();
    }
    LevelModel take() { return std::move(model_); }

private:
    const Item& item(int body) const { return kit_.items[scene_.origins[at(body)].self.item]; }

    void add_cell(int body)
    {
        const Item& vessel = item(body);
        if (!is_plain(vessel)) {
            // What lies in a roll or a pouch lies in whatever holds that.
            model_.vague_room += vessel.sheet || vessel.pouch ? 0 : largest_cavity(vessel);
            return;
        }
        const auto& hollow = scene_.scene.bodies[at(body)].hollow;
        if (!hollow) {
            return;
        }
        LevelCell cell{body, {}, height_of(hollow->shape), hollow->open_top || hollow->open_bottom, hollow->open_bottom};
        cell.depth += hollow->neck ? height_of(*hollow->neck) : 0;
        const auto id = scene_.origins[at(body)].self.item;
        const bool is_pressed_into = std::any_of(kit_.items.begin(), kit_.items.end(), [&](const Item& other) {
            return other.press && other.press->item == id;
        });
        const double given_back = is_pressed_into ? hollow->clearance : 0; // what is pressed in takes no clearance
        if (const auto* c = std::get_if<Cylinder>(&hollow->shape)) {
            cell.plan = {true, c->diameter / 2 + given_back, c->diameter / 2 + given_back};
            const auto* outer = std::get_if<Cylinder>(&vessel.outside);
            cell.outside = outer != nullptr ? foot_of(*outer) / 2 : 0;
        } else {
            const auto& b = std::get<Box>(hollow->shape);
            cell.plan = {false, b.length / 2 + given_back, b.width / 2 + given_back};
        }
        model_.cells.push_back(cell);
    }

    void add_body(int body)
    {
        const Item& self = item(body);
        model_.choices.emplace_back();
        model_.volume.push_back(is_plain(self) ? volume_ml(self.outside) * 1000 : least_volume(kit_, self));
        if (!is_plain(self)) {
            model_.missed_always += model_.volume.back();
            return;
        }
        for (std::size_t cell = 0; cell < model_.cells.size(); ++cell) {
            const int vessel = model_.cells[cell].body;
            if (cell > 0 && (vessel == body || !allowed(body, vessel))) {
                continue;
            }
            const unsigned forms = scene_.scene.fits[at(body)][cell == 0 ? 0 : at(vessel + 1)];
            add_choices(body, static_cast<int>(cell), forms);
        }
        if (fits_something_vague(body)) {
            model_.choices.back().push_back({vague, bare_stance(body, true)});
        }
    }

    bool may_be_vague(int body) const
    {
        const auto& choices = model_.choices[at(body)];
        return std::any_of(choices.begin(), choices.end(), [](const Choice& choice) { return choice.cell == vague; });
    }

    /// What stands out of an open vessel is wherever that vessel is.
    void pass_on_vagueness()
    {
        for (bool more = true; more;) {
            more = false;
            for (std::size_t body = 0; body < model_.choices.size(); ++body) {
                const auto& choices = model_.choices[body];
                const bool gets_it = std::any_of(choices.begin(), choices.end(), [&](const Choice& choice) {
                    return choice.cell > 0 && model_.cells[at(choice.cell)].open &&
                           may_be_vague(model_.cells[at(choice.cell)].body);
                });
                if (gets_it && !may_be_vague(static_cast<int>(body))) {
                    model_.choices[body].push_back({vague, bare_stance(static_cast<int>(body), true)});
                    more = true;
                }
            }
        }
    }

    void add_choices(int body, int cell, unsigned forms)
    {
        for (const Form form : {Form::standing, Form::on_end, Form::on_side, Form::upside_down, Form::on_other_end,
                                Form::on_other_side}) {
            if ((forms & bit(form)) != 0) {
                model_.choices.back().push_back({cell, stance(body, cell != 0, form)});
            }
        }
        if ((forms & bit(Form::leaning)) != 0) {
            model_.choices.back().push_back({cell == 0 ? vague : cell, cell == 0 ? bare_stance(body, true) : leaning(body, cell)});
        }
    }

    bool allowed(int body, int vessel) const
    {
        const packing::Company& company = scene_.scene.company;
        return company.empty() || !(company.out[at(body)][at(vessel)] || company.apart[at(body)][at(vessel)]);
    }

    /// Whether it may lie in something that has several forms, or is no plain vessel.
    bool fits_something_vague(int body) const
    {
        for (int other = 0; other < static_cast<int>(scene_.origins.size()); ++other) {
            const Item& vessel = item(other);
            if (other == body || is_plain(vessel) || !allowed(body, other)) {
                continue;
            }
            if (vessel.pouch) {
                return true; // its shapes are found in the search
            }
            for (int way = 0; way < scene_.scene.ways(other); ++way) {
                if (scene_.scene.fits[at(body)][at(scene_.scene.row(other, way) + 1)] != 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /// Of what counts with its volume alone.
    int bare_stance(int body, bool nested)
    {
        const auto same = std::find_if(model_.stances.begin(), model_.stances.end(), [&](const Stance& s) {
            return s.body == body && s.slabs == 0;
        });
        if (same != model_.stances.end()) {
            return static_cast<int>(same - model_.stances.begin());
        }
        model_.stances.push_back(
            {body, nested, Form::leaning, static_cast<int>(model_.slabs.size()), 0, model_.volume[at(body)]});
        return static_cast<int>(model_.stances.size()) - 1;
    }

    /// A rod leaning in a cavity: not lower than where it touches both walls. Its middle is cut by levels in at least a
    /// disc as thick as itself.
    int leaning(int body, int cell)
    {
        const Rod rod = *rod_of(scene_.scene.bodies[at(body)]);
        const Plan& plan = model_.cells[at(cell)].plan;
        const double diagonal = std::hypot(plan.half_length, plan.half_width);
        const double half = plan.round ? std::sqrt(std::max(0.0, plan.half_length * plan.half_length - rod.aside * rod.aside))
                                       : diagonal;
        constexpr double noticeable = 1e-6; // radians
        const double tilt = noticeable + std::asin(std::min(1.0, half / std::hypot(rod.along, rod.across))) -
                            std::atan2(rod.across, rod.along);
        const double most = std::clamp(tilt, 0.0, std::numbers::pi / 2);
        const double high = std::min(rod.along, rod.along * std::cos(most) + rod.across * std::sin(most));
        const double core = std::max(0.0, rod.along * std::cos(most) - rod.across * std::sin(most));
        const double radius = std::min(rod.across, rod.aside);
        Stance made{body, true, Form::leaning, static_cast<int>(model_.slabs.size()), 2, model_.volume[at(body)], rod.along,
                    rod.across, most};
        const Footprint disc{true, radius, radius}, point{true, 0, 0};
        model_.slabs.push_back({body, true, disc, 2 * core, disc});
        model_.slabs.push_back({body, true, point, 2 * std::max(0.0, high - core), point});
        made.missed = std::max(0.0, made.missed - disc.area() * 2 * core) * (1 - 1e-9);
        model_.stances.push_back(made);
        return static_cast<int>(model_.stances.size()) - 1;
    }

    int stance(int body, bool nested, Form form)
    {
        for (std::size_t k = 0; k < model_.stances.size(); ++k) {
            const Stance& s = model_.stances[k];
            if (s.body == body && s.nested == nested && s.form == form) {
                return static_cast<int>(k);
            }
        }
        Stance made{body, nested, form, static_cast<int>(model_.slabs.size()), 0, model_.volume[at(body)]};
        const Piece piece = piece_at(scene_.scene.bodies[at(body)], 0, {outermost, form}, 0);
        const auto add = [&](const Footprint& footprint, double height, const Footprint& whole) {
            model_.slabs.push_back({body, nested, footprint, height, whole});
            made.missed -= footprint.area() * height;
            ++made.slabs;
        };
        if (piece.kind == PieceKind::disc) {
            const double radius = piece.foot > 0 ? piece.foot : std::get<Cylinder>(item(body).outside).foot > 0
                                                     ? std::get<Cylinder>(item(body).outside).foot / 2
                                                     : piece.radius;
            add({true, radius, radius}, 2 * piece.half_height, {true, radius, radius});
        } else if (piece.kind == PieceKind::lying) {
            const double radius = foot_of(std::get<Cylinder>(item(body).outside)) / 2;
            double below = 0;
            const Footprint whole{false, piece.a, radius};
            for (const Step& step : stairs) {
                const double wide = step.half_width * radius; // along the level, across the axis
                add({false, piece.a, wide}, 2 * radius * (step.half_height - below), whole);
                below = step.half_height;
            }
        } else {
            const Footprint whole{false, piece.a, piece.b};
            add(whole, 2 * piece.half_height, whole);
        }
        made.missed = std::max(0.0, made.missed * (1 - 1e-9) - 1e-6); // rounding never counts too much
        model_.stances.push_back(made);
        return static_cast<int>(model_.stances.size()) - 1;
    }

    Kit kit_;
    KitScene scene_;
    LevelModel model_;
};

std::vector<double> critical_radii(const std::vector<Slab>& slabs)
{
    std::vector<double> found;
    for (std::size_t i = 0; i < slabs.size(); ++i) {
        const Footprint& f = slabs[i].whole;
        found.push_back(f.disc ? f.half_length : std::hypot(f.half_length, f.half_width));
        for (std::size_t j = 0; j < i && f.disc; ++j) {
            const Footprint& g = slabs[j].whole;
            if (g.disc && slabs[i].body != slabs[j].body) {
                found.push_back(f.half_length + g.half_length);
            }
        }
    }
    return found;
}

std::vector<double> critical_sides(const std::vector<Slab>& slabs)
{
    std::vector<double> sides, found;
    for (const Slab& slab : slabs) {
        sides.push_back(slab.whole.half_length);
        sides.push_back(slab.whole.half_width);
    }
    std::sort(sides.begin(), sides.end());
    sides.erase(std::unique(sides.begin(), sides.end()), sides.end());
    found = sides;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            found.push_back(sides[i] + sides[j]);
        }
    }
    return found;
}

} // namespace

LevelModel level_model(const Kit& kit) { return Builder(kit).take(); }

std::vector<double> critical_lengths(const LevelModel& model)
{
    return model.round ? critical_radii(model.slabs) : critical_sides(model.slabs);
}

} // namespace tuckwright::nesting
