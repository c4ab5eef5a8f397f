// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/exact.hpp"

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::proof {

Rational dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

Vector plus(const Vector& a, const Vector& b) { return {a[0] + b[0], a[1] + b[1], a[2] + b[2]}; }

Vector minus(const Vector& a, const Vector& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }

Vector times(const Rational& s, const Vector& a) { return {s * a[0], s * a[1], s * a[2]}; }

bool parallel(const Vector& a, const Vector& b)
{
    return a[1] * b[2] == a[2] * b[1] && a[2] * b[0] == a[0] * b[2] && a[0] * b[1] == a[1] * b[0];
}

Bounds root(const Rational& s)
{
    require(s >= 0, "a root is taken of a number that is not negative");
    const CGAL::Gmpz p = s.numerator(), q = s.denominator();
    if (mpz_perfect_square_p(p.mpz()) != 0 && mpz_perfect_square_p(q.mpz()) != 0) {
        const Rational exact(CGAL::sqrt(p), CGAL::sqrt(q));
        return {exact, exact};
    }
    // sqrt(p/q) = sqrt(p q 4^k) / (q 2^k), and the whole-number root is less than 1 below the true one.
    constexpr unsigned k = 64;
    CGAL::Gmpz scaled = p * q, unit = q;
    mpz_mul_2exp(scaled.mpz(), scaled.mpz(), 2 * k);
    mpz_mul_2exp(unit.mpz(), unit.mpz(), k);
    const CGAL::Gmpz floor = CGAL::sqrt(scaled);
    return {Rational(floor, unit), Rational(floor + 1, unit)};
}

Rational nanometres(double mm) { return Rational(static_cast<long>(to_nanometres(mm))); }

Vector nanometres(const Vec3& mm) { return {nanometres(mm.x), nanometres(mm.y), nanometres(mm.z)}; }

std::array<Vector, 3> axes_of(const Quaternion& turn)
{
    const Rational w(static_cast<long>(turn.w)), x(static_cast<long>(turn.x)), y(static_cast<long>(turn.y)),
        z(static_cast<long>(turn.z));
    const Rational n = w * w + x * x + y * y + z * z;
    require(n > 0, "a rotation's quaternion is not all zero");
    const Rational two_n = Rational(2) / n;
    const Rational xx = two_n * x * x, yy = two_n * y * y, zz = two_n * z * z;
    const Rational xy = two_n * x * y, yz = two_n * y * z, zx = two_n * z * x;
    const Rational wx = two_n * w * x, wy = two_n * w * y, wz = two_n * w * z;
    return {Vector{1 - yy - zz, xy + wz, zx - wy}, Vector{xy - wz, 1 - xx - zz, yz + wx},
            Vector{zx + wy, yz - wx, 1 - xx - yy}};
}

} // namespace tuckwright::proof
