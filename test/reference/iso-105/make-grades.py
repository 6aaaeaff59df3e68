"""Writes change-grades.csv: the equations of ISO 105-A05 in 40 digits, apart from the product's code (Python 3)."""
from decimal import Decimal as D, getcontext
import random

getcontext().prec = 40
PI = D("3.141592653589793238462643383279502884197")


def atan(x):
    turns = 0
    while abs(x) > D("0.1"):
        x = x / (1 + (1 + x * x).sqrt())
        turns += 1
    total, term, n = D(0), x, 1
    while abs(term) > D(10) ** -38:
        total += term / n if (n // 2) % 2 == 0 else -term / n
        term *= x * x
        n += 2
    return total * 2 ** turns


def hue(a, b):
    if a == 0 and b == 0:
        return D(0)
    angle = PI / 2 if a == 0 else atan(abs(b) / abs(a))
    if a < 0:
        angle = PI - angle
    degrees = angle * 180 / PI
    return degrees if b >= 0 else (360 - degrees) % 360


def grade(r, t):
    cr, ct = [(x[1] ** 2 + x[2] ** 2).sqrt() for x in (r, t)]
    hr, ht = hue(r[1], r[2]), hue(t[1], t[2])
    mean_c = (cr + ct) / 2
    if cr == 0 or ct == 0:
        mean_h = hr + ht
    elif abs(hr - ht) <= 180:
        mean_h = (hr + ht) / 2
    else:
        mean_h = (hr + ht + 360) / 2 if hr + ht < 360 else (hr + ht - 360) / 2
    dl, dc = t[0] - r[0], ct - cr
    dh2 = (t[1] - r[1]) ** 2 + (t[2] - r[2]) ** 2 - dc ** 2
    turn = t[2] * r[1] - t[1] * r[2]
    dh = max(dh2, D(0)).sqrt() * (1 if turn >= 0 else -1)
    away = abs(mean_h - 280)
    x = ((away if away <= 180 else 360 - away) / 30) ** 2
    d = dc * mean_c * (-x).exp() / 100
    dcf = (dc - d) / (1 + (20 * mean_c / 1000) ** 2)
    dhf = (dh - d) / (1 + (10 * mean_c / 1000) ** 2)
    de = (dl ** 2 + dcf ** 2 + dhf ** 2).sqrt()
    gs = 5 - de / D("1.7") if de <= D("3.4") else 5 - (de / D("0.85")).ln() / D(2).ln()
    ends = ["0.40", "1.25", "2.10", "2.95", "4.10", "5.80", "8.20", "11.60"]
    names = ["5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1"]
    return de, gs, names[sum(1 for e in ends if de >= D(e))]


fixed = [((50, 0, 0), (52, 0, 0)), ((30, 4, -12), (31, 6, -9)), ((26, "-0.1", "-1.2"), ("27.1", "-0.02", "-0.5")), ((60, 10, 40), (60, 10, 40)),
         ((45, 20, -1), (46, 19, 2)), ((70, "-5", "-25"), (66, "-8", "-20")), ((35, 30, 15), (40, 22, 10)), ((80, 0, 0), (79, 1, 3))]
random.seed(105)
pairs = [(tuple(map(D, map(str, r))), tuple(map(D, map(str, t)))) for r, t in fixed]
for _ in range(32):
    r = (D(random.randint(150, 850)) / 10, D(random.randint(-400, 400)) / 10, D(random.randint(-400, 500)) / 10)
    t = tuple(v + D(random.randint(-60, 60)) / 10 for v in r)
    pairs.append((r, t))
with open("change-grades.csv", "w") as out:
    out.write("# Instrumental grades for the change in colour from a standard (1) to a trial (2), CIELAB for D65 and the 10 degree observer\n")
    out.write("# Equations of ISO 105-A05:1996, computed in 40 digits by make-grades.py\n")
    out.write("L1,a1,b1,L2,a2,b2,difference,value,grade\n")
    for r, t in pairs:
        de, gs, name = grade(r, t)
        out.write(",".join(str(v) for v in r + t) + f",{de:.9f},{gs:.9f},{name}\n")
