// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/certificate.hpp"

#include "tuckwright/handling.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

void certify(Bundle& bundle)
{
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (bundle.items[item].reach != Wanted::any) {
            bundle.items[item].out_after = unpacking(bundle, item).count;
        }
    }
    bundle.certificate.planes = pair_planes(bundle);
    for (const auto& planes : {step_planes(bundle, bundle.steps), load_planes(bundle), unpacking_planes(bundle)}) {
        bundle.certificate.planes.insert(bundle.certificate.planes.end(), planes.begin(), planes.end());
    }
}

} // namespace tuckwright
