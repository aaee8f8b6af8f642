"""The same start-up in scipy (LSODA), beside lentic's own in one call.

    python3 benches/peer/startup.py        (needs numpy and scipy)

Parameters and cubes are read from lentic's JSON; the equations are written out
here once more. Prints the time of a run on either side, their ratio, and the
largest difference of the curves of ammonia, nitrite and nitrate as a share of
each curve's peak.
"""

import json
import subprocess
import time
from math import exp, log

import numpy as np
from scipy.integrate import solve_ivp

COMMAND = ["cargo", "run", "--release", "--quiet", "--example", "startup_numbers"]
DAYS, RUNS = 90, 5
SOIL, CAP, WATER, HOURS, HARVEST = 0.025, 0.025, 0.16, 10.0, 0.5
CELSIUS, OXYGEN = 25.0, 7.0
GAS = 8.314462618


def lim(c, k):
    return c / (k + c)


def warmth(activation):
    return exp(activation * (CELSIUS - 20) / (GAS * (CELSIUS + 273.15) * 293.15))


def diffusion(free, porosity):
    return porosity * free / (1 - log(porosity * porosity))


class Cube:
    def __init__(self, p, light, cover, fast, slow):
        self.p, self.light = p, light
        free = p["cap.ammonium_diffusivity"]
        in_soil = diffusion(free, p["soil.porosity"])
        in_cap = diffusion(free, p["cap.porosity"])
        self.g = p["cap.enhancement"] / (SOIL / 2 / in_soil + CAP / in_cap + 0.001 / free)
        self.tau = 0.2 * p["cap.retardation"] * CAP**2 / (in_cap / p["cap.porosity"])
        mass = p["soil.dry_bulk_density"] * SOIL
        sorbed = p["soil.dry_bulk_density"] / 1000 * p["soil.ammonium_kd"]
        self.store = SOIL * (p["soil.porosity"] + sorbed)
        labile = p["soil.labile_share"] * p["soil.total_nitrogen"] * mass
        mineral = p["soil.mineral_nitrogen"] * mass
        stirred = p["soil.stirred_share"] * mineral
        floating = cover * p["floating.closed_layer"]
        self.start = [
            labile, mineral - stirred, stirred / WATER, 0, p["tap.nitrate"], p["tap.phosphate"],
            p["nitrifiers.ammonia_seed"], p["nitrifiers.nitrite_seed"],
            floating, floating * p["floating.start_nitrogen"],
            fast, fast * p["fast.start_nitrogen"], slow, p["algae.start"],
        ]

    def rates(self, t, y):
        p = self.p
        labile, mineral, tan, no2, no3, srp, xa, xn, f, nf, s, ns, g, a = y
        made = p["soil.mineralisation"] * 2 ** ((CELSIUS - 25) / 10) * labile
        pore = mineral / self.store
        flux = self.g * (pore - tan) * (1 - exp(-t / self.tau))
        ga = p["nitrifiers.ammonia_growth"] * warmth(68000) * lim(tan, p["nitrifiers.ammonia_half"])
        ga *= lim(OXYGEN, p["nitrifiers.ammonia_oxygen_half"])
        gn = p["nitrifiers.nitrite_growth"] * warmth(44000) * lim(no2, p["nitrifiers.nitrite_half"])
        gn *= lim(OXYGEN, p["nitrifiers.nitrite_oxygen_half"])
        ra, rn = ga * xa / p["nitrifiers.ammonia_yield"], gn * xn / p["nitrifiers.nitrite_yield"]
        decay = p["nitrifiers.decay"] * 1.05 ** (CELSIUS - 20)
        ox = no2 + no3
        den = p["water.denitrification"] * ox
        layers = f / p["floating.closed_layer"]
        cover = min(1, layers)
        top = 1 - cover + cover * (1 - p["floating.absorptance"]) ** max(1, layers)
        kz = p["water.extinction"] * WATER + p["submerged.extinction"] * (s + g) + p["algae.extinction"] * a
        light = self.light * top * (1 - exp(-kz)) / kz
        est, lag = 1 - exp(-t / p["submerged.rooting"]), 1 - exp(-t / p["submerged.lag"])
        melt = p["submerged.melt"] * exp(-t / 10)
        pw = lim(srp, p["submerged.phosphorus_half"])

        def split(half, weight):
            first = lim(tan, half)
            return first, (1 - first) * weight * lim(ox, half)

        def store(content, low, high):
            return (1 - low / content) / (1 - low / high), max(0, (high - content) / (high - low))

        grow_f = room_f = qf = 0
        if f > 1e-12:
            qf = nf / f
            full, room_f = store(qf, p["floating.least_nitrogen"], p["floating.most_nitrogen"])
            warm = 10 ** (-(((CELSIUS - 26.7) / (8 - 26.7)) ** 2))
            dli = lim(self.light * HOURS * 0.0036, p["floating.daily_light_half"])
            grow_f = p["floating.growth"] * warm * dli * min(full, lim(srp, p["floating.phosphorus_half"]))
            grow_f *= (1 - f / p["floating.capacity"]) * (1 - exp(-t / 2))
        loss_f = p["floating.loss"] * 2 ** ((CELSIUS - 25) / 10)
        dead_f = loss_f * p["floating.dead_share"] * f
        af, of = split(p["floating.nitrogen_half"], p["water.oxidised_preference"])
        uf = p["floating.uptake"] * room_f * f
        leak_f = 0.5 * max(0, nf - p["floating.most_nitrogen"] * f)
        cut = 2 * max(0, f - HARVEST * p["floating.closed_layer"])

        an, on = split(p["submerged.nitrogen_half"], p["water.oxidised_preference"])
        grow_s = room_s = qs = by_root = 0
        if s > 1e-12:
            qs = ns / s
            full, room_s = store(qs, p["fast.least_nitrogen"], p["fast.most_nitrogen"])
            fed = 1 - (1 - pw) * (1 - est)
            by_root = 1 - pw / fed if fed > 0 else 0
            grow_s = p["fast.growth"] * 1.07 ** (CELSIUS - 25) * p["submerged.carbon_factor"] * HOURS / 12
            grow_s *= lim(light, p["fast.light_half"]) * min(full, fed) * lag
        dead_s = (p["fast.death"] + melt) * s
        us = p["fast.uptake"] * room_s * s
        ur = us * p["fast.root_uptake"] * est * lim(pore, 0.5)
        leak_s = 0.5 * max(0, ns - p["fast.most_nitrogen"] * s)

        root_g = p["slow.rooted_share"] * est
        lim_g = min(1, root_g + (1 - root_g) * min(an + on, pw))
        grow_g = p["slow.growth"] * 1.07 ** (CELSIUS - 25) * p["submerged.carbon_factor"] / 0.6 * HOURS / 12
        grow_g *= lim(light, p["slow.light_half"]) * lim_g * lag
        net_g = max(0, grow_g - p["slow.respiration"]) * g
        lost_g = max(0, p["slow.respiration"] - grow_g) * g
        dead_g = (p["slow.death"] + 0.5 * melt) * g
        share = min(1, root_g / lim_g) if lim_g > 0 else 0
        qg = p["slow.tissue_nitrogen"]
        wg = qg * net_g * (1 - share)
        wg_a = wg * an / (an + on) if an + on > 0 else 0

        aa, oa = split(p["algae.nitrogen_half"], 1)
        grow_a = p["algae.growth"] * HOURS / 12 * lim(light, p["algae.light_half"])
        grow_a *= min(aa + oa, lim(srp, p["algae.phosphorus_half"]))
        ua = p["algae.tissue_nitrogen"] * grow_a * a
        ua_a = ua * aa / (aa + oa) if aa + oa > 0 else 0
        dead_a = p["algae.loss"] * a

        freed = p["water.dissolved_share"]
        back = freed * (qf * dead_f + qs * dead_s + qg * dead_g + p["algae.tissue_nitrogen"] * dead_a)
        back += qg * lost_g + leak_f + leak_s
        taken_ox = uf * of + us * on + (wg - wg_a) + (ua - ua_a)
        part = no2 / ox if ox > 0 else 0
        pf, ps, pa = p["floating.tissue_phosphorus"], p["submerged.tissue_phosphorus"], p["algae.tissue_phosphorus"]
        p_taken = pf * grow_f * f + ps * (grow_s * s * (1 - by_root) + net_g * (1 - share)) + pa * grow_a * a
        p_back = freed * (pf * dead_f + ps * (dead_s + dead_g) + pa * dead_a)
        return [
            -made,
            made - flux - ur - qg * net_g * share,
            (flux + back - uf * af - us * an - wg_a - ua_a - ra) / WATER,
            (ra - rn - (taken_ox + den) * part) / WATER,
            (rn - (taken_ox + den) * (1 - part)) / WATER,
            (p["soil.phosphorus_per_nitrogen"] * max(flux, 0) + p_back - p_taken) / WATER,
            (ga - decay) * xa,
            (gn - decay) * xn,
            (grow_f - loss_f) * f - cut,
            uf * (af + of) - qf * dead_f - leak_f - qf * cut,
            (grow_s - p["fast.respiration"]) * s - dead_s,
            us * (an + on) + ur - qs * dead_s - leak_s,
            net_g - lost_g - dead_g,
            grow_a * a - dead_a,
        ]

    def run(self, rtol=1e-6, atol=1e-8):
        days = np.arange(DAYS + 1)
        return solve_ivp(self.rates, (0, DAYS), self.start, "LSODA", t_eval=days, rtol=rtol, atol=atol)


def main():
    told = json.loads(subprocess.run(COMMAND, check=True, capture_output=True, text=True).stdout)
    for cube in told["cubes"]:
        peer = Cube(told["numbers"], cube["light"], cube["cover"], cube["fast"], cube["slow"])
        start = time.perf_counter()
        for _ in range(RUNS):
            loose = peer.run()
        seconds = (time.perf_counter() - start) / RUNS
        exact = peer.run(1e-10, 1e-13).y[2:5]
        ours = np.array(cube["days"]).T
        peak = exact.max(axis=1, keepdims=True)
        error = lambda curves: np.abs((curves - exact) / peak).max()
        print(
            f"{cube['name']}: lentic {cube['seconds'] * 1e3:.2f} ms, LSODA {seconds * 1e3:.1f} ms, "
            f"ratio {seconds / cube['seconds']:.0f}; largest difference from LSODA at 1e-10: "
            f"lentic {error(ours):.1e}, LSODA at 1e-6 {error(loose.y[2:5]):.1e} of the peak"
        )


if __name__ == "__main__":
    main()
