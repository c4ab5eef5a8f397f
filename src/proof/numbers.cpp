// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/numbers.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string_view>

#include "tuckwright/units.hpp"

namespace tuckwright::proof {

namespace {

/// How far from a whole number of nanometres a double in millimetres may be: what rounding to a double can do.
constexpr double off_grid_nm = 1e-3;

class NumberCheck {
public:
    NumberCheck(const Bundle& bundle, Findings& findings) : bundle_(bundle), findings_(findings) {}

    void run()
    {
        length("the clearance", bundle_.clearance, true);
        shape("the envelope", bundle_.envelope);
        covers();
        for (std::size_t i = 0; i < bundle_.items.size() && !findings_.full(); ++i) {
            item(i);
        }
        planes();
        rests();
        steps();
    }

private:
    void object(const std::string& what) { findings_.add("number", what); }

    /// Whether the number lies on the grid and in range.
    bool on_grid(const std::string& whose, double mm)
    {
        if (!std::isfinite(mm)) {
            object(whose + " is not a finite number");
        } else if (std::abs(mm) > longest_length_mm) {
            object(fmt::format("{} is {} mm; nothing may be beyond {} mm", whose, mm, longest_length_mm));
        } else if (const double nm = mm * nanometres_per_millimetre; std::abs(nm - std::nearbyint(nm)) > off_grid_nm) {
            object(fmt::format("{} is {} mm, which is not a whole number of nanometres", whose, mm));
        } else {
            return true;
        }
        return false;
    }

    void length(const std::string& whose, double mm, bool may_be_zero = false)
    {
        // The grid point counts, not the double: less than half a nanometre is nothing.
        if (on_grid(whose, mm) && (to_nanometres(mm) < 0 || (to_nanometres(mm) == 0 && !may_be_zero))) {
            object(fmt::format("{} is {} mm; it must {}", whose, mm, may_be_zero ? "not be negative" : "be positive"));
        }
    }

    void shape(const std::string& whose, const Shape& shape, bool may_be_flat = false)
    {
        if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
            length(whose + "'s diameter", cylinder->diameter);
            length(whose + "'s height", cylinder->height, may_be_flat);
            length(whose + "'s foot", cylinder->foot, true);
            if (cylinder->foot != 0 && cylinder->foot >= cylinder->diameter) {
                object(fmt::format("{}'s foot is {} mm; it must be less than the diameter", whose, cylinder->foot));
            }
            return;
        }
        const auto& box = std::get<Box>(shape);
        length(whose + "'s length", box.length);
        length(whose + "'s width", box.width);
        length(whose + "'s height", box.height, may_be_flat);
    }

    void point(const std::string& whose, const Vec3& mm)
    {
        on_grid(whose + " x", mm.x);
        on_grid(whose + " y", mm.y);
        on_grid(whose + " z", mm.z);
    }

    void pose(const std::string& whose, const Pose& pose)
    {
        point(whose + "'s centre", pose.center);
        if (pose.turn == Quaternion{0, 0, 0, 0}) {
            object(whose + "'s rotation is all zero");
        }
    }

    void weight(const std::string& whose, double grams)
    {
        if (!std::isfinite(grams) || grams < 0) {
            object(fmt::format("{} is {} g; it must be finite and not negative", whose, grams));
        }
    }

    void item(std::size_t i)
    {
        const auto& item = bundle_.items[i];
        const std::string name = named(bundle_, i);
        if (item.solids.empty()) {
            object(name + " has no solid");
        }
        for (std::size_t k = 0; k < item.solids.size(); ++k) {
            const std::string whose = fmt::format("{}: solid {}", name, k + 1);
            shape(whose, item.solids[k].shape);
            pose(whose, item.solids[k].pose);
        }
        for (std::size_t k = 0; k < item.cavities.size(); ++k) {
            const std::string whose = fmt::format("{}: cavity {}", name, k + 1);
            shape(whose, item.cavities[k].shape);
            pose(whose, item.cavities[k].pose);
            if (item.cavities[k].neck) {
                shape(whose + "'s narrow opening", *item.cavities[k].neck, true);
            }
        }
        if (item.pressed) {
            length(name + ": its diameter left to itself", *item.pressed);
        }
        weight(name + ": its weight", item.weight_g);
        weight(name + ": the weight of its contents", item.contents_g);
        if (item.bears_g) {
            weight(name + ": what it bears", *item.bears_g);
        }
    }

    void covers()
    {
        if (const auto& bag = bundle_.bag) {
            length("the bag's girth", bag->girth);
            length("the bag's length", bag->length);
            length("the bag's thickness", bag->thickness);
            weight("the bag's weight", bag->weight_g);
        }
        for (const Band& band : bundle_.bands) {
            length(fmt::format("\"{}\": its girth", band.id), band.girth);
            weight(fmt::format("\"{}\": its weight", band.id), band.weight_g);
        }
    }

    bool names_solid(std::size_t item, std::size_t solid) const
    {
        return item < bundle_.items.size() && solid < bundle_.items[item].solids.size();
    }

    void planes()
    {
        const auto& planes = bundle_.certificate.planes;
        for (std::size_t k = 0; k < planes.size() && !findings_.full(); ++k) {
            const auto& plane = planes[k];
            if (!names_solid(plane.first, plane.first_solid) || !names_solid(plane.second, plane.second_solid)) {
                object(fmt::format("plane {} of the certificate is for a solid that is not there", k + 1));
            } else if (plane.normal == std::array<std::int64_t, 3>{0, 0, 0}) {
                object(fmt::format("plane {} of the certificate has no normal", k + 1));
            }
        }
    }

    void steps()
    {
        const auto& steps = bundle_.steps;
        for (std::size_t k = 0; k < steps.size() && !findings_.full(); ++k) {
            if (steps[k].via) {
                point(fmt::format("step {}: the way aside's", k + 1), *steps[k].via);
            }
        }
    }

    void rests()
    {
        const auto& rests = bundle_.certificate.rests;
        for (std::size_t k = 0; k < rests.size() && !findings_.full(); ++k) {
            const auto& rest = rests[k];
            if (rest.item >= bundle_.items.size() || (rest.on && *rest.on >= bundle_.items.size())) {
                object(fmt::format("rest {} of the certificate is for an item that is not there", k + 1));
            }
            point(fmt::format("rest {} of the certificate: the point's", k + 1), rest.point);
        }
    }

    const Bundle& bundle_;
    Findings& findings_;
};

} // namespace

void check_numbers(const Bundle& bundle, Findings& findings) { NumberCheck(bundle, findings).run(); }

} // namespace tuckwright::proof
