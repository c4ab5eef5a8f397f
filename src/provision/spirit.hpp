// SPDX-License-Identifier: GPL-3.0-or-later
/// Mixtures of ethanol and water at 20 °C.
#pragma once

namespace tuckwright::provisioning {

struct Spirit {
    double by_volume = 0; ///< strength: the ethanol's own volume, as a share of the mixture's
    double by_mass = 0;   ///< share of ethanol by weight
    double density = 0;   ///< g/ml
};

/// g/ml, by the share of ethanol by weight. Source: OIML R 22 (1975), International alcoholometric tables, general formula;
/// coefficients from memory, and the table at 20 °C comes out by them to its last digit.
double density_by_mass(double share);

/// Ensures: shares and density agree to 1e-12. Requires: 0 to 1.
Spirit spirit_by_volume(double share);
Spirit spirit_by_mass(double share);

/// g/ml of pure ethanol.
double ethanol_density();

/// Parts by volume poured together.
struct Mixture {
    Spirit spirit;    ///< what comes of it
    double plain = 0; ///< what its strength would be if volumes added up
    double parts = 0; ///< its true volume; less than the sum
};
/// Requires: parts not negative, not both nought.
Mixture mixed(const Spirit& spirit, double spirit_parts, double water_parts);

} // namespace tuckwright::provisioning
