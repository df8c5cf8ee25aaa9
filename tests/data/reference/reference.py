"""Makes the reference values of SciPy and statsmodels that tests/statistics/reference reads.

Run from the project folder:
    /usr/bin/python3 tests/data/reference/reference.py
"""
import json
import math
import random
import warnings
from decimal import Decimal, getcontext

import scipy
import statsmodels
from scipy import stats
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

warnings.simplefilter("ignore")
getcontext().prec = 60
FOLDER = "tests/data/reference/"
LEVELS = [0.8, 0.9, 0.95, 0.95, 0.95, 0.99, 0.998]
draw = random.Random(20260101)


def keep(family, reference, cases):
    assert len(cases) >= 200
    head = {
        "reference": reference,
        "command": "/usr/bin/python3 tests/data/reference/reference.py",
        "versions": {"SciPy": scipy.__version__, "statsmodels": statsmodels.__version__},
    }
    lines = ",\n".join(json.dumps(case, separators=(",", ":"), allow_nan=False) for case in cases)
    with open(f"{FOLDER}{family}.json", "w", encoding="utf8") as file:
        file.write(json.dumps(head)[:-1] + ', "cases": [\n' + lines + "\n]}\n")
    print(f"{family:28} {len(cases)} cases")


def size(most):
    return max(1, int(math.exp(draw.uniform(0, math.log(most + 1)))))


def count(most=3000):
    n = size(most)
    p = draw.choice([0, 0.01, 0.03, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97, 1])
    return sum(draw.random() < p for _ in range(n)), n


def one_proportion(method):
    cases = []
    for _ in range(220):
        x, n = count()
        level = draw.choice(LEVELS)
        lower, upper = map(float, proportion_confint(x, n, 1 - level, method))
        # The ends of Jeffreys are set at no events and at nothing but events, which it leaves open.
        lower, upper = (0.0 if x == 0 else lower), (1.0 if x == n else upper)
        cases.append({"x": x, "n": n, "level": level, "lower": lower, "upper": upper})
    return cases


def score(x1, n1, x2, n2, difference):
    """Miettinen & Nurminen 1985, Stat Med 4:213, appendix: the likeliest pair in closed form.

    Written out in decimals of 60 digits: statsmodels 0.13.5 has count0 for nobs0 in its tmp1, which
    gives 7/34 against 1/34 the ends .0273 and .3434 in place of the published .0270 and .3453.
    """
    total, d = Decimal(n1 + n2), difference
    l2 = (n1 + 2 * n2) * d - total - x1 - x2
    l1 = (n2 * d - total - 2 * x2) * d + x1 + x2
    l0 = x2 * d * (1 - d)
    p2 = root_between(lambda p: ((total * p + l2) * p + l1) * p + l0, max(Decimal(0), -d), min(Decimal(1), 1 - d))
    p1 = p2 + d
    variance = (p1 * (1 - p1) / n1 + p2 * (1 - p2) / n2) * total / (total - 1)
    return (Decimal(x1) / n1 - Decimal(x2) / n2 - d) / variance.sqrt()


def root_between(f, low, high):
    """The place where f turns from positive to negative, halved 110 times."""
    for _ in range(110):
        middle = (low + high) / 2
        if f(middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def score_end(x1, n1, x2, n2, target, low, high):
    for _ in range(56):
        middle = (low + high) / 2
        if score(x1, n1, x2, n2, middle) > target:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def two_proportions(method):
    cases = []
    while len(cases) < 210:
        (x1, n1), (x2, n2) = count(600), count(600)
        level = draw.choice(LEVELS)
        if method == "newcomb":
            ends = confint_proportions_2indep(x1, n1, x2, n2, "newcomb", "diff", 1 - level)
        else:
            z = Decimal(float(stats.norm.isf((1 - level) / 2)))
            seen = Decimal(x1) / n1 - Decimal(x2) / n2
            if abs(seen) == 1:
                continue
            ends = (
                score_end(x1, n1, x2, n2, z, Decimal(-1), seen),
                score_end(x1, n1, x2, n2, -z, seen, Decimal(1)),
            )
        if not all(math.isfinite(end) for end in ends):
            continue
        case = {"x1": x1, "n1": n1, "x2": x2, "n2": n2, "level": level}
        cases.append({**case, "lower": float(ends[0]), "upper": float(ends[1])})
    return cases


keep("wilson-statsmodels", "proportion_confint(x, n, 1 - level, 'wilson')", one_proportion("wilson"))
keep("clopper-pearson-statsmodels", "proportion_confint(x, n, 1 - level, 'beta')", one_proportion("beta"))
keep("jeffreys-statsmodels", "proportion_confint(x, n, 1 - level, 'jeffreys')", one_proportion("jeffreys"))
keep("newcombe", "confint_proportions_2indep(…, 'newcomb', 'diff')", two_proportions("newcomb"))
keep("miettinen-nurminen", "own Python with 60 decimals, no package; see score()", two_proportions("score"))
