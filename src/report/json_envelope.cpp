// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_envelope.hpp"

#include "tuckwright/units.hpp"

namespace tuckwright::report
{

nlohmann::ordered_json envelope_part(const Shape& envelope)
{
    nlohmann::ordered_json part;
    if (const auto* cylinder = std::get_if<Cylinder>(&envelope)) {
        part = {
            {"shape", "cylinder"}, {"diameter_mm", snap(cylinder->diameter)}, {"height_mm", snap(cylinder->height)}};
    } else {
        const auto& box = std::get<Box>(envelope);
        part = {{"shape", "box"},
                {"length_mm", snap(box.length)},
                {"width_mm", snap(box.width)},
                {"height_mm", snap(box.height)}};
    }
    part["volume_ml"] = volume_ml(envelope);
    return part;
}

} // namespace tuckwright::report
