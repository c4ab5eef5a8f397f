// SPDX-License-Identifier: GPL-3.0-or-later
/// Contracts: what a caller must have made sure of. Breaking one is a bug of the code that calls, ours or that of a program
/// which uses the library; never of a person with a faulty file.
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
        std::string_view file = where.file_name(); // told from the project's own folder, wherever it was built
        for (const std::string_view room : {"src/", "include/", "tests/"}) {
            if (const auto at = file.rfind(room); at != std::string_view::npos) {
                file.remove_prefix(at);
                break;
            }
        }
        throw ContractBroken(std::string(file) + ":" + std::to_string(where.line()) + ": required: " + std::string(what));
    }
}

} // namespace tuckwright
