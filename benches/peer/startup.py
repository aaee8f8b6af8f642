"""The start-up model a second time, for scipy's LSODA, against lentic's own curves.

    python3 benches/peer/startup.py

Builds and runs `startup_numbers.rs`, reads its numbers and inputs, follows the
same tanks with the equations below, and prints how long a run takes in each program and
how far their curves lie apart. Needs numpy and scipy. The rates are plain Python, which is
most of LSODA's time; the last column shows that share.

A tank at 25 C only: how diffusion changes with temperature is left out.
"""

import json
import subprocess
import time
from math import exp, log
from pathlib import Path

import numpy as np
from scipy.integrate import odeint

ROOT = Path(__file__).resolve().parents[2]
DAYS = 90
REPEATS = 5
# The tolerances of lentic's single run, and tight ones for a curve to measure both by.
RELATIVE, TIGHT_RELATIVE = 1e-6, 1e-11
STATES = "labile soil ammonia nitrite nitrate phosphate aob nob floating floating_n fast fast_n slow algae"
ABSOLUTE = np.array(
    [1e-7, 1e-7, 1e-7, 1e-7, 1e-7, 1e-8, 1e-10, 1e-10, 1e-6, 1e-7, 1e-6, 1e-7, 1e-6, 1e-7]
)
CURVES = {"ammonia": 2, "nitrite": 3, "nitrate": 4}


class Numbers:
    """The numbers of one group, `soil.porosity` as `Numbers(all, "soil").porosity`."""

    def __init__(self, numbers, group):
        prefix = group + "."
        for name, value in numbers.items():
            if name.startswith(prefix):
                setattr(self, name[len(prefix) :], value)


def lim(amount, half):
    return amount / (half + amount)


def effective(diffusivity, porosity):
    return porosity * diffusivity / (1 - log(porosity**2))


def warmed(activation, celsius):
    kelvin = celsius + 273.15
    return exp(activation * (kelvin - 293.15) / (8.314462618 * kelvin * 293.15))


def tank(numbers, inputs):
    """First state and rates of a tank."""
    groups = "soil cap water tap nitrifiers floating submerged fast slow algae lamp".split()
    soil, cap, water, tap, nitrifiers, F, sub, S, G, A, lamp = (
        Numbers(numbers, group) for group in groups
    )
    z, celsius, hours = inputs["water_depth_m"], inputs["temperature_c"], inputs["light_hours"]
    soil_m, cap_m = inputs["soil_depth_m"], inputs["cap_depth_m"]
    surface_light = lamp.level * inputs["light_umol_m2_s"]

    # bed
    D = cap.ammonium_diffusivity
    in_soil, in_cap = effective(D, soil.porosity), effective(D, cap.porosity)
    g = cap.enhancement / (0.5 * soil_m / in_soil + cap_m / in_cap + 0.001 / D)
    tau = 0.2 * cap.retardation * cap_m**2 / (in_cap / cap.porosity)
    store_m = soil_m * (soil.porosity + soil.dry_bulk_density / 1000 * soil.ammonium_kd)
    k_min = soil.mineralisation * 2 ** ((celsius - 25) / 10)

    # bacteria
    f_ph = max(0.05, 1 - 0.833 * max(0.0, 7.2 - inputs["ph"]))
    oxygen = inputs["oxygen_mg_l"]
    mu_aob = nitrifiers.ammonia_growth * warmed(68000, celsius) * f_ph
    mu_aob *= lim(oxygen, nitrifiers.ammonia_oxygen_half)
    mu_nob = nitrifiers.nitrite_growth * warmed(44000, celsius) * f_ph
    mu_nob *= lim(oxygen, nitrifiers.nitrite_oxygen_half)
    decay = nitrifiers.decay * 1.05 ** (celsius - 20)

    # growth and losses that no state changes
    end = 8.0 if celsius < 26.7 else 40.5
    dli = surface_light * hours * 0.0036
    mu_f = F.growth * 10 ** -(((celsius - 26.7) / (end - 26.7)) ** 2) * lim(dli, F.daily_light_half)
    loss_f = F.loss * 2 ** ((celsius - 25) / 10)
    warm = 1.07 ** (min(celsius, 28) - 25)
    mu_s = S.growth * warm * sub.carbon_factor * hours / 12
    mu_g = G.growth * warm * sub.carbon_factor / 0.6 * hours / 12
    mu_a = A.growth * hours / 12
    most_floating = inputs["thinned_to_cover"] * F.closed_layer
    passed_leaf = 1 - F.absorptance
    # a stand that is not planted never comes
    has_floating, has_fast = inputs["cover"] > 0, inputs["fast_g_m2"] > 0

    def split(tan, ox, half, weight):
        a = lim(tan, half)
        return a, (1 - a) * weight * lim(ox, half)

    def rates(state, t):
        Nlab, Nsoil, TAN, NO2, NO3, P, XA, XN, mF, nF, mS, nS, mG, mA = state
        OX = NO2 + NO3
        nitrite_share = NO2 / OX if OX > 0 else 0.0

        # bed
        m = k_min * Nlab
        pore = Nsoil / store_m
        j = g * (pore - TAN) * (1 - exp(-t / tau))

        # bacteria
        grow_a = mu_aob * lim(TAN, nitrifiers.ammonia_half)
        grow_n = mu_nob * lim(NO2, nitrifiers.nitrite_half)
        rA = grow_a * XA / nitrifiers.ammonia_yield
        rN = grow_n * XN / nitrifiers.nitrite_yield
        den = water.denitrification * OX

        # light
        layers = mF / F.closed_layer
        cover = min(1.0, layers)
        top = surface_light * (1 - cover + cover * passed_leaf ** max(1.0, layers))
        kz = water.extinction * z + sub.extinction * (mS + mG) + A.extinction * mA
        light = top * (1 - exp(-kz)) / kz

        est = 1 - exp(-t / sub.rooting)
        lag = 1 - exp(-t / sub.lag)
        melt = sub.melt * exp(-t / 10)

        # floaters
        dF = takeF_a = takeF_o = leakF = deadF = deadF_n = growF = cutF = cutF_n = 0.0
        dnF = 0.0
        if has_floating:
            q = nF / mF
            droop = (1 - F.least_nitrogen / q) / (1 - F.least_nitrogen / F.most_nitrogen)
            growF = mu_f * min(droop, lim(P, F.phosphorus_half))
            growF *= (1 - mF / F.capacity) * (1 - exp(-t / 2)) * mF
            room = max(0.0, (F.most_nitrogen - q) / (F.most_nitrogen - F.least_nitrogen))
            a, o = split(TAN, OX, F.nitrogen_half, water.oxidised_preference)
            takeF_a, takeF_o = F.uptake * room * mF * a, F.uptake * room * mF * o
            deadF = F.dead_share * loss_f * mF
            cutF = 2 * max(0.0, mF - most_floating)
            leakF = 0.5 * max(0.0, nF - F.most_nitrogen * mF)
            deadF_n, cutF_n = q * deadF, q * cutF
            dF = growF - loss_f * mF - cutF
            dnF = takeF_a + takeF_o - leakF - deadF_n - cutF_n

        a, o = split(TAN, OX, sub.nitrogen_half, water.oxidised_preference)
        pw = lim(P, sub.phosphorus_half)

        # fast submerged plants
        dS = dnS = takeS_a = takeS_o = rootS = leakS = deadS = deadS_n = pS = 0.0
        if has_fast:
            q = nS / mS
            droop = (1 - S.least_nitrogen / q) / (1 - S.least_nitrogen / S.most_nitrogen)
            fp = 1 - (1 - pw) * (1 - est)
            growS = mu_s * lim(light, S.light_half) * min(droop, fp) * lag * mS
            room = max(0.0, (S.most_nitrogen - q) / (S.most_nitrogen - S.least_nitrogen))
            largest = S.uptake * room * mS
            takeS_a, takeS_o = largest * a, largest * o
            rootS = largest * S.root_uptake * est * lim(pore, 0.5)
            leakS = 0.5 * max(0.0, nS - S.most_nitrogen * mS)
            deadS = (S.death + melt) * mS
            deadS_n = q * deadS
            pS = growS * pw / fp if fp > 0 else 0.0
            dS = growS - S.respiration * mS - deadS
            dnS = takeS_a + takeS_o + rootS - leakS - deadS_n

        # slow submerged plants
        rG = G.rooted_share * est
        limG = min(1.0, rG + (1 - rG) * min(a + o, pw))
        growG = mu_g * lim(light, G.light_half) * limG * lag
        netG = max(0.0, growG - G.respiration) * mG
        lossG = max(0.0, G.respiration - growG) * mG
        deadG = (G.death + 0.5 * melt) * mG
        by_roots = min(1.0, rG / limG) if limG > 0 else 0.0
        needG = G.tissue_nitrogen * netG * (1 - by_roots)
        takeG_a = needG * a / (a + o) if a + o > 0 else needG
        takeG_o = needG - takeG_a
        rootG = G.tissue_nitrogen * netG * by_roots
        pG = netG * (1 - by_roots)

        # algae
        aA, oA = split(TAN, OX, A.nitrogen_half, 1.0)
        growA = mu_a * lim(light, A.light_half) * min(aA + oA, lim(P, A.phosphorus_half)) * mA
        deadA = A.loss * mA
        needA = A.tissue_nitrogen * growA
        takeA_a = needA * aA / (aA + oA) if aA + oA > 0 else needA
        takeA_o = needA - takeA_a

        # water
        f = water.dissolved_share
        dead_n = deadF_n + deadS_n + G.tissue_nitrogen * deadG + A.tissue_nitrogen * deadA
        dead_p = F.tissue_phosphorus * deadF + sub.tissue_phosphorus * (deadS + deadG)
        dead_p += A.tissue_phosphorus * deadA
        given_back = f * dead_n + G.tissue_nitrogen * lossG + leakF + leakS
        oxidised = takeF_o + takeS_o + takeG_o + takeA_o + den
        took_p = F.tissue_phosphorus * growF + sub.tissue_phosphorus * (pS + pG)
        took_p += A.tissue_phosphorus * growA
        return (
            -m,
            m - j - rootS - rootG,
            (j + given_back - takeF_a - takeS_a - takeG_a - takeA_a - rA) / z,
            (rA - rN - oxidised * nitrite_share) / z,
            (rN - oxidised * (1 - nitrite_share)) / z,
            (soil.phosphorus_per_nitrogen * max(j, 0.0) + f * dead_p - took_p) / z,
            (grow_a - decay) * XA,
            (grow_n - decay) * XN,
            dF,
            dnF,
            dS,
            dnS,
            netG - lossG - deadG,
            growA - deadA,
        )

    soil_kg_m2 = soil.dry_bulk_density * soil_m
    mineral = soil_kg_m2 * soil.mineral_nitrogen
    floating = inputs["cover"] * F.closed_layer
    first = {
        "labile": soil_kg_m2 * soil.total_nitrogen * soil.labile_share,
        "soil": mineral * (1 - soil.stirred_share),
        "ammonia": tap.ammonia + mineral * soil.stirred_share / z,
        "nitrite": tap.nitrite,
        "nitrate": tap.nitrate,
        "phosphate": tap.phosphate,
        "aob": nitrifiers.ammonia_seed,
        "nob": nitrifiers.nitrite_seed,
        "floating": floating,
        "floating_n": floating * F.start_nitrogen,
        "fast": inputs["fast_g_m2"],
        "fast_n": inputs["fast_g_m2"] * S.start_nitrogen,
        "slow": inputs["slow_g_m2"],
        "algae": A.start,
    }
    return np.array([first[name] for name in STATES.split()]), rates


def follow(first, rates, relative, absolute):
    days = np.arange(DAYS + 1.0)
    return odeint(rates, first, days, rtol=relative, atol=absolute, mxstep=100_000)


def timed(first, rates):
    """Seconds of the fastest of some runs, and the share of one that goes to the rates."""
    spent = 0.0

    def watched(state, t):
        nonlocal spent
        start = time.perf_counter()
        found = rates(state, t)
        spent += time.perf_counter() - start
        return found

    whole = clocked(lambda: follow(first, watched, RELATIVE, ABSOLUTE))
    best = min(clocked(lambda: follow(first, rates, RELATIVE, ABSOLUTE)) for _ in range(REPEATS))
    return best, spent / whole


def clocked(work):
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def apart(curves, others):
    """The largest difference of each of the three curves over its own peak."""
    return [float(np.max(np.abs(a - b)) / np.max(np.abs(b))) for a, b in zip(curves, others)]


def main():
    build = ["cargo", "run", "--quiet", "--release", "--example", "startup_numbers"]
    told = json.loads(subprocess.run(build, cwd=ROOT, check=True, stdout=subprocess.PIPE).stdout)
    print(f"{'case':<16} {'lentic':>9} {'LSODA':>9} {'ratio':>6} {'in rates':>8}")
    lines = []
    for case in told["cases"]:
        first, rates = tank(told["numbers"], case["inputs"])
        seconds, share = timed(first, rates)
        ratio = seconds / case["seconds_per_run"]
        own = f"{case['seconds_per_run'] * 1e3:.2f} ms"
        print(f"{case['name']:<16} {own:>9} {seconds * 1e3:>6.1f} ms {ratio:>6.0f} {share:>8.0%}")
        ours = [np.array(case[name]) for name in CURVES]
        peer = follow(first, rates, RELATIVE, ABSOLUTE).T[list(CURVES.values())]
        exact = follow(first, rates, TIGHT_RELATIVE, ABSOLUTE * 1e-5).T[list(CURVES.values())]
        lines.append((case["name"], "lentic, LSODA", apart(ours, peer)))
        lines.append((case["name"], "lentic, tight LSODA", apart(ours, exact)))
        lines.append((case["name"], "LSODA, tight LSODA", apart(peer, exact)))
    print("\nlargest difference of the curves over their peaks")
    print(f"{'case':<16} {'of':<20}" + "".join(f"{name:>10}" for name in CURVES))
    for name, pair, differences in lines:
        print(f"{name:<16} {pair:<20}" + "".join(f"{value:>10.1e}" for value in differences))


if __name__ == "__main__":
    main()
