"""Error against work: the library's integrator and scipy's LSODA on the same shots. `lsoda.py BUILD SHOTS [COUNT]`, SHOTS being the built
example `shots`. Prints tables; a time is never a pass or a fail.

Error is that of the place across the lane at the pins, against body.py at a relative tolerance of 1e-12.

How LSODA is treated. Its stepping is compiled, and so are the equations (field.c, built with the C compiler), in momentum form, which has
fewer unknowns than ours; but scipy calls them through Python, so each evaluation costs a call. The second time in the table has that call
taken out: it is what LSODA would need if it called C, and the number to compare with. It has no search for events in scipy's compiled form.
So a first, untimed run at the same tolerance finds, with body.py's events, where its own path meets the edges of the oil, the end of slip
and the pins; the timed run is told those times and stops there. Our time has the search for events, the stations and the axis on the ball in
it; LSODA's has none of these. Slip ends at 20 times the tolerance, or it might step past the end without a notice; under half of that
friction fades. Shots that slip again after rolling are left out, and so are those that leave the lane.
"""

import ctypes
import json
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
from scipy.integrate import odeint

import body
import check

TOLERANCES = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10]
# Errors to compare at, m.
ERRORS = [1e-5, 1e-6, 1e-7, 1e-8]
REPEATS = 5
COUNT = 12


class Shot(ctypes.Structure):
    """The struct of field.c."""

    _fields_ = [
        ("mass", ctypes.c_double), ("radius", ctypes.c_double), ("moments", ctypes.c_double * 3), ("offset", ctypes.c_double * 3),
        *((k, ctypes.c_double) for k in ("oil", "ramp", "ratio", "inner", "taper", "mu_oil", "mu_dry", "soft", "down", "across")),
    ]


def built(folder):
    """field.c as a library."""
    library = folder / "field.so"
    subprocess.run(["cc", "-O2", "-shared", "-fPIC", "-o", library, Path(__file__).with_name("field.c"), "-lm"], check=True)
    found = ctypes.CDLL(str(library))
    for name in ("slide", "turn_over", "nothing"):
        getattr(found, name).argtypes = [ctypes.c_void_p] * 3
        getattr(found, name).restype = None
    return found


def called(function, shot, size):
    """A function of C as odeint wants it; the result's place is used again and again."""
    out = np.zeros(size)
    there, given = out.ctypes.data, ctypes.addressof(shot)

    def field(t, y):
        function(given, y.__array_interface__["data"][0], there)
        return out

    return field


def by_lsoda(library, shot, tolerance):
    """Where it is at the pins, evaluations, seconds, and seconds less the calls through Python."""
    no_slip = max(1e-7, 20 * tolerance)
    how = dict(rtol=tolerance, atol=tolerance / 10)
    guide = check.roll(shot, [check.PINS], **how, no_slip=no_slip, method="LSODA")
    lane = guide.lane
    c = Shot(
        shot["mass"], shot["radius"], tuple(shot["moments"]), tuple(shot["offset"]), lane.oil, lane.ramp, lane.ratio,
        lane.edges_across()[0], lane.taper * body.BOARD, lane.mu_oil, lane.mu_dry, no_slip / 2,
    )
    fields = {"slip": called(library.slide, c, 11), "roll": called(library.turn_over, c, 9)}
    seconds, evaluations, over = [], 0, None
    for _ in range(REPEATS):
        state, was, evaluations, start = np.array(guide.first[:11]), "slip", 0, time.process_time()
        for mode, zone, begins, ends in guide.pieces:
            if mode != was:
                state, was = np.array(guide.to_rolling([*state.tolist(), 0.0])), mode
            c.down, c.across = zone
            if ends > begins:
                out, told = odeint(fields[mode], state, (begins, ends), tfirst=True, tcrit=[ends], mxstep=100000, full_output=True, **how)
                state = out[-1]
                evaluations += int(told["nfe"][-1])
        seconds.append(time.process_time() - start)
        over = state
    last = guide.station(ends, was, [*over.tolist(), 0.0], 0.0)
    empty = called(library.nothing, c, 11)
    probe = np.zeros(11)
    calls = []
    for _ in range(REPEATS):
        start = time.process_time()
        for _ in range(evaluations):
            empty(0.0, probe)
        calls.append(time.process_time() - start)
    # What remains of the way to the pins is a rounding of the first run's.
    return last["y"] + (check.PINS - last["x"]) * last["vy"] / last["vx"], evaluations, min(seconds), min(seconds) - min(calls)


def at_error(errors, costs, wanted):
    """A cost at an error, straight between the points on logarithmic scales; none outside them."""
    points = sorted(zip(np.log(errors), np.log(costs)))
    x, y = zip(*points)
    if not x[0] <= np.log(wanted) <= x[-1]:
        return float("nan")
    return float(np.exp(np.interp(np.log(wanted), x, y)))


def smooth(shot):
    """Whether a shot's path is one that slides, then rolls, on the lane to the pins; and where that is."""
    found = check.roll(shot, [check.PINS], rtol=1e-12, no_slip=1e-9)
    return found.last["y"] if found.slips_again == 0 and found.widest < body.WIDTH / 2 else None


def shots_at(program, tolerance, count):
    found = subprocess.run([program, "each", repr(tolerance), str(count)], check=True, capture_output=True, text=True)
    return [json.loads(line) for line in found.stdout.splitlines()]


def table(name, rows):
    print(f"\n{name}\n  tolerance    error, m  evaluations   time, us" + ("   less calls, us" if len(rows[0]) > 4 else ""))
    for tolerance, error, evaluations, *seconds in rows:
        print(f"  {tolerance:9.0e}  {error:10.2e}  {evaluations:11.0f}" + "".join(f"{1e6 * s:11.0f}" for s in seconds))


def main():
    folder, program, *more = sys.argv[1:]
    count = int(more[0]) if more else COUNT
    library = built(Path(folder))
    shots = shots_at(program, 1e-6, count)
    truth = {k: y for k, y in enumerate(map(smooth, shots)) if y is not None}
    print(f"{len(truth)} of {len(shots)} shots slide, then roll, on the lane to the pins. Errors are medians over them, work is the mean.")

    ours, theirs = [], []
    for tolerance in TOLERANCES:
        told = shots_at(program, tolerance, count)
        rows = [(told[k]["last"]["y"] - y, told[k]["evaluations"], told[k]["seconds"]) for k, y in truth.items()]
        ours.append((tolerance, np.median([abs(r[0]) for r in rows]), *np.mean([r[1:] for r in rows], axis=0)))
        rows = [by_lsoda(library, shots[k], tolerance) for k in truth]
        rows = [(found[0] - y, *found[1:]) for found, y in zip(rows, truth.values())]
        theirs.append((tolerance, np.median([abs(r[0]) for r in rows]), *np.mean([r[1:] for r in rows], axis=0)))
    table("spanwright", ours)
    table("scipy's LSODA, events given", theirs)

    print("\nLSODA over spanwright at equal error\n     error, m  evaluations   time  less calls")
    for wanted in ERRORS:
        mine, yours = np.array(ours).T, np.array(theirs).T
        ratios = [at_error(yours[1], yours[k], wanted) / at_error(mine[1], mine[j], wanted) for k, j in ((2, 2), (3, 3), (4, 3))]
        print(f"  {wanted:11.0e}" + "".join(f"{r:11.2f}" for r in ratios))


if __name__ == "__main__":
    main()
