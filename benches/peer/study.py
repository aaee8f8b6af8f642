"""Fifty rows of a grid a second time, by scipy's LSODA, against lentic's own peaks.

    python3 benches/peer/study.py

Builds and runs `grid_numbers.rs` on one thread, follows the same tanks with the
equations of `startup.py`, and prints the time per simulated run in each program, their
ratio, and the largest difference of a peak. Needs numpy and scipy.
"""

import json
import os
import subprocess
import time

import numpy as np
from scipy.integrate import odeint

from startup import ABSOLUTE, CURVES, DAYS, RELATIVE, ROOT, tank

NITRITE_PER_NITROGEN = 46.005 / 14.007
# Peaks are looked for from this day on, eight times a day.
FROM_DAY, PER_DAY = 3, 8


def peaks(case):
    first, rates = tank(case["numbers"], case["inputs"])
    times = np.linspace(0.0, DAYS, DAYS * PER_DAY + 1)
    states = odeint(rates, first, times, rtol=RELATIVE, atol=ABSOLUTE, mxstep=100_000)
    late = states[FROM_DAY * PER_DAY :]
    nitrite = late[:, CURVES["nitrite"]].max() * NITRITE_PER_NITROGEN
    return late[:, CURVES["ammonia"]].max(), nitrite


def main():
    build = ["cargo", "run", "--quiet", "--release", "--example", "grid_numbers"]
    one_thread = {**os.environ, "RAYON_NUM_THREADS": "1"}
    run = subprocess.run(build, cwd=ROOT, check=True, stdout=subprocess.PIPE, env=one_thread)
    told = json.loads(run.stdout)
    start = time.perf_counter()
    found = [peaks(case) for case in told["cases"]]
    seconds = (time.perf_counter() - start) / len(found)
    own = told["seconds_per_run"]
    print(f"{len(found)} rows; lentic {own * 1e6:.0f} us, LSODA {seconds * 1e3:.1f} ms a run")
    print(f"ratio {seconds / own:.0f}")
    for place, name in enumerate(("ammonia", "nitrite")):
        apart = max(
            abs(peak[place] / case[name] - 1) for peak, case in zip(found, told["cases"])
        )
        print(f"largest difference of the {name} peak: {apart:.1e}")


if __name__ == "__main__":
    main()
