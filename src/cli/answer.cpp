// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/answer.hpp"

#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"

namespace tuckwright::cli
{

void check_output(const std::string& json_path, const std::string& source, std::vector<Problem>& problems)
{
    if (!json_path.empty() && json_path != dash) {
        if (const auto problem = cannot_write(json_path, source)) {
            problems.push_back(*problem);
        }
    }
}

bool write_answer(const std::string& json_path, const std::function<std::string()>& json, const std::string& text)
{
    if (json_path == dash) {
        return print(json());
    }
    if (!json_path.empty()) {
        if (const auto problem = write_file(json_path, json())) {
            tell({*problem});
            return false;
        }
    }
    return print(text);
}

} // namespace tuckwright::cli
