"""Writes distribution-values.ts: values of distribution functions to 17 digits, by arbitrary-precision arithmetic.

Made with Python 3.11, mpmath 1.3.0 (30 digits), SciPy 1.17.1 (only as the start of the quantile search). No chance is
involved. Run: python3 distribution-values.py > distribution-values.ts
"""

import mpmath as mp
from scipy import stats

mp.mp.dps = 30
ROWS = []


def add(name, args, value):
    ROWS.append((name, args, mp.nstr(mp.mpf(value), 17)))


def p_lower(a, x, digits=45):
    # Power series, NIST DLMF 8.11.4: all terms positive.
    with mp.workdps(digits):
        a, x = mp.mpf(a), mp.mpf(x)
        term = total = mp.mpf(1)
        k = 0
        while term > total * mp.mpf(10) ** -digits:
            k += 1
            term *= x / (a + k)
            total += term
        return total * mp.exp(a * mp.log(x) - x - mp.loggamma(a + 1))


def p_upper(a, x):
    # The subtraction loses up to 270 digits, so 320 are carried.
    with mp.workdps(320):
        return 1 - p_lower(a, x, 320)


def beta_lower(x, a, b):
    return mp.betainc(a, b, 0, x, regularized=True)


def binomial_sum(first, last, n, p):
    term = mp.binomial(n, first) * mp.mpf(p) ** first * (1 - mp.mpf(p)) ** (n - first)
    odds = mp.mpf(p) / (1 - mp.mpf(p))
    total = mp.mpf(0)
    for k in range(first, last + 1):
        total += term
        term *= odds * (n - k) / (k + 1)
    return total


def root(f, start):
    return mp.findroot(f, (mp.mpf(start) * (1 - mp.mpf(10) ** -8), mp.mpf(start) * (1 + mp.mpf(10) ** -8)), tol=1e-40)


PROBABILITIES = [1e-12, 0.001, 0.025, 0.1, 0.4, 0.7, 0.975, 0.999]
for x in [-37, -8, -1.5, -0.25, 0.5, 2, 6]:
    add("normalCdf", [x], mp.ncdf(x))
    add("normalSurvival", [x], mp.ncdf(-mp.mpf(x)))
    add("normalLogCdf", [x], mp.log(mp.ncdf(x)))
for p in PROBABILITIES:
    add("normalQuantile", [p], root(lambda z: mp.ncdf(z) - mp.mpf(p), stats.norm.ppf(p)))


def t_lower(x, v):
    tail = beta_lower(v / (v + mp.mpf(x) ** 2), mp.mpf(v) / 2, mp.mpf(1) / 2) / 2
    return tail if x < 0 else 1 - tail


for v in [0.5, 1, 4, 16, 300]:
    for x in [-20, -2, 0.75, 5]:
        add("studentTCdf", [x, v], t_lower(x, v))
        add("studentTSurvival", [x, v], t_lower(-x, v))
    for p in [0.001, 0.025, 0.4, 0.95, 0.995]:
        add("studentTQuantile", [p, v], root(lambda z: t_lower(z, v) - mp.mpf(p), stats.t.ppf(p, v)))
    add("studentTLogPdf", [1.5, v], mp.loggamma((mp.mpf(v) + 1) / 2) - mp.loggamma(mp.mpf(v) / 2)
        - mp.log(v * mp.pi) / 2 - (mp.mpf(v) + 1) / 2 * mp.log(1 + mp.mpf("2.25") / v))

for a in [0.25, 1, 3.5, 40, 150.5, 1000, 20000]:
    for share in [0.25, 0.875, 1, 1.125, 2]:
        x = a * share
        low, high = p_lower(a, x), p_upper(a, x)
        if low > 1e-250:
            add("gammaCdf", [x, a, 1], low)
        if high > 1e-250:
            add("gammaSurvival", [x, a, 1], high)
    for p in [1e-9, 0.025, 0.5, 0.9, 0.999]:
        add("gammaQuantile", [p, a, 1], root(lambda z: p_lower(a, z) - mp.mpf(p), stats.gamma.ppf(p, a)))
    add("gammaLogPdf", [0.75 * a, a, 1],
        (mp.mpf(a) - 1) * mp.log(mp.mpf(0.75) * a) - mp.mpf(0.75) * a - mp.loggamma(a))
for v in [1, 20, 54, 2000]:
    add("chiSquareCdf", [v * 0.75, v], p_lower(mp.mpf(v) / 2, mp.mpf(v) * 3 / 8))
    add("chiSquareSurvival", [v * 1.5, v], p_upper(mp.mpf(v) / 2, mp.mpf(v) * 3 / 4))
    for p in [0.025, 0.95]:
        add("chiSquareQuantile", [p, v], root(lambda z: p_lower(mp.mpf(v) / 2, z / 2) - mp.mpf(p), stats.chi2.ppf(p, v)))
    add("chiSquareLogPdf", [v * 1.25, v], (mp.mpf(v) / 2 - 1) * mp.log(mp.mpf(v) * 5 / 4) - mp.mpf(v) * 5 / 8
        - mp.mpf(v) / 2 * mp.log(2) - mp.loggamma(mp.mpf(v) / 2))

for a, b in [(0.5, 0.5), (2, 3), (30, 2), (200, 300)]:
    for x in [0.03125, 0.375, 0.90625]:
        add("betaCdf", [x, a, b], beta_lower(mp.mpf(x), a, b))
        add("betaSurvival", [x, a, b], beta_lower(1 - mp.mpf(x), b, a))
        add("betaLogPdf", [x, a, b], (mp.mpf(a) - 1) * mp.log(x) + (mp.mpf(b) - 1) * mp.log(1 - mp.mpf(x))
            - mp.log(mp.beta(a, b)))
    for p in [0.025, 0.5, 0.975]:
        add("betaQuantile", [p, a, b], root(lambda z: beta_lower(z, a, b) - mp.mpf(p), stats.beta.ppf(p, a, b)))
for d1, d2 in [(1, 1), (3, 8), (20, 200)]:
    for x in [0.25, 1.5, 12]:
        add("fCdf", [x, d1, d2], beta_lower(d1 * mp.mpf(x) / (d1 * mp.mpf(x) + d2), mp.mpf(d1) / 2, mp.mpf(d2) / 2))
        add("fSurvival", [x, d1, d2], beta_lower(d2 / (d1 * mp.mpf(x) + d2), mp.mpf(d2) / 2, mp.mpf(d1) / 2))
        add("fLogPdf", [x, d1, d2], mp.mpf(d1) / 2 * mp.log(mp.mpf(d1) / d2) + (mp.mpf(d1) / 2 - 1) * mp.log(x)
            - (mp.mpf(d1) + d2) / 2 * mp.log(1 + d1 * mp.mpf(x) / d2) - mp.log(mp.beta(mp.mpf(d1) / 2, mp.mpf(d2) / 2)))
    for p in [0.025, 0.95]:
        add("fQuantile", [p, d1, d2],
            root(lambda z: beta_lower(d1 * z / (d1 * z + d2), mp.mpf(d1) / 2, mp.mpf(d2) / 2) - mp.mpf(p),
                 stats.f.ppf(p, d1, d2)))

for scale, shape in [(2, 0.5), (600, 1.75)]:
    for x in [0.001, 1.5, 900]:
        hazard = (mp.mpf(x) / scale) ** mp.mpf(shape)
        add("weibullCdf", [x, scale, shape], -mp.expm1(-hazard))
        add("weibullSurvival", [x, scale, shape], mp.exp(-hazard))
        add("weibullLogPdf", [x, scale, shape],
            mp.log(mp.mpf(shape) / scale) + (mp.mpf(shape) - 1) * mp.log(mp.mpf(x) / scale) - hazard)
    for p in [1e-9, 0.1, 0.999]:
        add("weibullQuantile", [p, scale, shape], scale * (-mp.log(1 - mp.mpf(p))) ** (1 / mp.mpf(shape)))
for x in [0.001, 7]:
    add("exponentialCdf", [x, 3], -mp.expm1(-mp.mpf(x) / 3))
    add("exponentialSurvival", [x, 3], mp.exp(-mp.mpf(x) / 3))
    add("exponentialLogPdf", [x, 3], -mp.log(3) - mp.mpf(x) / 3)
    add("lognormalCdf", [x, 1, 0.75], mp.ncdf((mp.log(x) - 1) / mp.mpf(0.75)))
    add("lognormalSurvival", [x, 1, 0.75], mp.ncdf((1 - mp.log(x)) / mp.mpf(0.75)))
    add("lognormalLogPdf", [x, 1, 0.75], mp.log(mp.npdf((mp.log(x) - 1) / mp.mpf(0.75)) / mp.mpf(0.75) / mp.mpf(x)))
add("lognormalQuantile", [0.1, 1, 0.75],
    mp.exp(1 + mp.mpf(0.75) * root(lambda z: mp.ncdf(z) - mp.mpf(0.1), stats.norm.ppf(0.1))))

for mean in [0.125, 5, 250, 30000]:
    for k in [0, 3, 9, 280, 30100]:
        if mean / 50 <= k + 1 <= 50 * mean + 50:
            terms = p_upper(k + 1, mp.mpf(mean))
            add("poissonCdf", [k, mean], terms)
            add("poissonSurvival", [k, mean], p_lower(k + 1, mp.mpf(mean)))
            add("poissonLogPmf", [k, mean], k * mp.log(mean) - mean - mp.loggamma(k + 1))
    for p in [0.001, 0.5, 0.95]:
        add("poissonQuantile", [p, mean], int(stats.poisson.ppf(p, mean)))
for n, p in [(10, 0.25), (1000, 0.5), (50000, 0.125)]:
    for k in [0, 3, 9, 520, 6300]:
        if k < n and abs(k - n * p) < 12 * mp.sqrt(n * p):
            add("binomialCdf", [k, n, p], binomial_sum(0, k, n, p))
            add("binomialSurvival", [k, n, p], binomial_sum(k + 1, n, n, p))
            add("binomialLogPmf", [k, n, p], mp.log(mp.binomial(n, k)) + k * mp.log(p) + (n - k) * mp.log(1 - mp.mpf(p)))
    for q in [0.001, 0.5, 0.95]:
        add("binomialQuantile", [q, n, p], int(stats.binom.ppf(q, n, p)))
for x in [0.125, 1.5, 10, 1e5]:
    add("logGamma", [x], mp.loggamma(x))
    add("digamma", [x], mp.digamma(x))

print("/** Written by distribution-values.py beside this file: name, arguments, value. */")
print("export const distributionValues: readonly (readonly [string, readonly number[], number])[] = [")
for name, args, value in ROWS:
    print(f"  ['{name}', [{', '.join(repr(a) for a in args)}], {value}],")
print("];")
