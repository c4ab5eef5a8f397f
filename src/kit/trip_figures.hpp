// SPDX-License-Identifier: GPL-3.0-or-later
/// The numbers of a trip with their units: temperatures, heights, shares, densities.
#pragma once
#include <optional>
#include <string>

#include "kit/fields.hpp"

namespace tuckwright::reading {

/// Degrees Celsius from "8 C" or "46 F"; a plain number is degrees Celsius. Ensures: within the bounds, which are too.
std::optional<double> read_temperature(Reading& reading, const Node& node, const std::string& subject, double low,
                                       double high);
/// Metres above the sea, from "620 m" or "2000 ft"; a plain number is metres. Ensures: from -450 to 8500.
std::optional<double> read_altitude(Reading& reading, const Node& node, const std::string& subject);
/// A share of 1 from "50 %"; the sign is not left out, lest 0.5 and 50 are mixed up. Ensures: within the bounds, shares.
std::optional<double> read_share(Reading& reading, const Node& node, const std::string& subject, double low,
                                 double high);
/// Grams a millilitre from "0.4 kg/l", "0.4 g/ml" or "400 g/l". Ensures: within the bounds.
std::optional<double> read_density(Reading& reading, const Node& node, const std::string& subject, double low,
                                   double high);
/// A number without a unit. Ensures: above 0, and at most `high`.
std::optional<double> read_number(Reading& reading, const Node& node, const std::string& subject, double high);

} // namespace tuckwright::reading
