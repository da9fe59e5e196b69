#!/usr/bin/python3
"""Writes scipy_vectors.csv: quantiles, probabilities and tolerance factors by another library.

Needs python3-scipy (1.10.1 wrote the file). Run by hand: /usr/bin/python3 scipy_vectors.py
The tolerance factors are solved here from their definition, with scipy's own integral, root finder
and noncentral chi-squared distribution.
"""
import csv
import math
import pathlib

from scipy import integrate, optimize, stats


def tolerance_factor(n, nu, content, confidence):
    def lack(k):
        def density(z):
            r2 = stats.ncx2.ppf(content, 1, z * z / n) if z else stats.chi2.ppf(content, 1)
            return 2 * stats.norm.pdf(z) * stats.chi2.sf(nu * r2 / k**2, nu)
        value, _ = integrate.quad(density, 0, 9, epsabs=1e-13, epsrel=1e-13, limit=200)
        return value - confidence
    return optimize.brentq(lack, 0.5, 500, xtol=1e-12, rtol=1e-13)


def rows():
    degrees = [1, 2, 3, 4, 5, 7, 9, 12, 18, 25, 40, 60, 120, 500, 5000, 1e6]
    levels = [0.5001, 0.6, 0.75, 0.9, 0.95, 0.975, 0.99, 0.995, 0.9995, 0.99995]
    for p in levels + [0.001, 0.025, 0.2]:
        yield "normal_quantile", p, "", "", "", stats.norm.ppf(p)
    for z in [-8, -5, -3, -1.959963984540054, -1, -0.1, 0, 0.3, 1, 2, 4, 6]:
        yield "normal_cdf", z, "", "", "", stats.norm.cdf(z)
    for nu in degrees:
        for p in levels:
            yield "student_quantile", p, nu, "", "", stats.t.ppf(p, nu)
        for t in [-40, -12.7, -4.3, -2, -1, -0.2, 0, 0.5, 1.5, 3, 10]:
            yield "student_cdf", t, nu, "", "", stats.t.cdf(t, nu)
    for a in [1, 2, 3, 4, 6, 9, 19]:
        for b in [1, 2, 3, 4, 6, 9, 12, 20, 40, 120, 1000]:
            yield "fisher_quantile", 0.95, a, b, "", stats.f.ppf(0.95, a, b)
    for n in [1, 2, 3, 4, 5, 8, 10, 20, 50]:
        for m in [1, 3, 10]:
            nu = m * max(n - 1, 4 if n == 1 else 1)
            yield "tolerance_factor", n, nu, 0.95, 0.95, tolerance_factor(n, nu, 0.95, 0.95)
    yield "tolerance_factor", 6, 5, 0.90, 0.99, tolerance_factor(6, 5, 0.90, 0.99)
    yield "tolerance_factor", 12, 33, 0.99, 0.90, tolerance_factor(12, 33, 0.99, 0.90)


def main():
    path = pathlib.Path(__file__).with_name("scipy_vectors.csv")
    with path.open("w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["function", "a", "b", "c", "d", "value"])
        for row in rows():
            assert math.isfinite(row[-1])
            writer.writerow([*row[:-1], repr(float(row[-1]))])


if __name__ == "__main__":
    main()
