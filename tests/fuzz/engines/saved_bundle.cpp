// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstddef>
#include <cstdint>

#include "fuzz/targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    tuckwright::fuzz::try_saved_bundle({reinterpret_cast<const char*>(data), size});
    return 0;
}
