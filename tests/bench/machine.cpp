// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/machine.hpp"

#include <fmt/format.h>
#include <fstream>
#include <thread>

namespace tuckwright::bench {

std::string machine()
{
    std::string model = "unknown processor";
    std::ifstream file("/proc/cpuinfo");
    for (std::string line; std::getline(file, line);) {
        const auto colon = line.find(": ");
        if (line.rfind("model name", 0) == 0 && colon != std::string::npos) {
            model = line.substr(colon + 2);
            break;
        }
    }
    return fmt::format("{}, {} cores", model, std::thread::hardware_concurrency());
}

std::string build()
{
    return fmt::format("tuckwright {}, {} build, g++ {}", TUCKWRIGHT_VERSION, TUCKWRIGHT_BUILD_TYPE, __VERSION__);
}

} // namespace tuckwright::bench
