// SPDX-License-Identifier: GPL-3.0-or-later
/// Contracts: what a caller must have made sure of. Breaking one is a bug of ours, never the user's.
#pragma once
#include <source_location>
#include <stdexcept>
#include <string>
#include <string_view>

namespace tuckwright {

/// Thrown when a contract is broken; the text names the place and what was required.
class ContractBroken : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

/// Throws ContractBroken unless the condition holds.
inline void require(bool condition, std::string_view what,
                    std::source_location where = std::source_location::current())
{
    if (!condition) {
        throw ContractBroken(std::string(where.file_name()) + ":" + std::to_string(where.line()) +
                             ": required: " + std::string(what));
    }
}

} // namespace tuckwright
