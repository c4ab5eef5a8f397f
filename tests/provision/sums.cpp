// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/sums.hpp"

#include <cmath>
#include <stdexcept>

namespace tuckwright::test {

namespace {

class Reader {
public:
    explicit Reader(const std::string& text) : text_(text) {}

    double whole()
    {
        const double value = sum();
        skip();
        if (at_ != text_.size()) {
            throw std::invalid_argument("more follows");
        }
        return value;
    }

private:
    void skip() { at_ = std::min(text_.find_first_not_of(' ', at_), text_.size()); }

    bool take(const std::string& word)
    {
        skip();
        const bool found = text_.compare(at_, word.size(), word) == 0;
        at_ += found ? word.size() : 0;
        return found;
    }

    double sum()
    {
        double value = product();
        for (;;) {
            if (take("+")) {
                value += product();
            } else if (take("-")) {
                value -= product();
            } else {
                return value;
            }
        }
    }

    double product()
    {
        double value = power();
        for (;;) {
            if (take("x")) {
                value *= power();
            } else if (take("/")) {
                value /= power();
            } else {
                return value;
            }
        }
    }

    double power()
    {
        const double base = single();
        return take("^") ? std::pow(base, single()) : base;
    }

    double single()
    {
        if (take("log")) {
            return std::log10(single());
        }
        if (take("(")) {
            const double value = sum();
            if (!take(")")) {
                throw std::invalid_argument("a bracket is open");
            }
            return value;
        }
        skip();
        std::size_t used = 0;
        const double value = std::stod(text_.substr(at_), &used);
        at_ += used;
        return value;
    }

    std::string text_;
    std::size_t at_ = 0;
};

} // namespace

std::optional<double> worked_out(const std::string& sum)
{
    try {
        return Reader(sum).whole();
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

} // namespace tuckwright::test
