// SPDX-License-Identifier: GPL-3.0-or-later
/// How the fuzzers of saved bundles change them.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>

#include "fuzz/targets.hpp"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

/// Three times out of four a value of the JSON is changed, else bytes.
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed)
{
    if (seed % 4 == 0) {
        return LLVMFuzzerMutate(data, size, most);
    }
    const std::string changed = tuckwright::fuzz::changed_json({reinterpret_cast<const char*>(data), size}, seed);
    if (changed.size() > most) {
        return LLVMFuzzerMutate(data, size, most);
    }
    std::copy(changed.begin(), changed.end(), data);
    return changed.size();
}
