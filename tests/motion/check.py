"""Holds the library's rolls against an integrator that shares no line with it. `check.py SHOTS CSV`: the JSON lines of `shots.rs`, and the
reference trajectories that the library's own tests are held against.

First the integrator itself is held against closed forms, against what any rigid body must keep, and against the trajectories; only then is
it a reference.
"""

import csv
import json
import sys
from concurrent.futures import ProcessPoolExecutor
from math import atan2, cos, degrees, hypot, pi, radians, sin, sqrt

import numpy as np
from scipy.integrate import quad
from scipy.special import ellipj

import body

# The first three are what the project promises; the others are those of the reference trajectories.
LIMITS = {
    "position, m": 0.0005,
    "angle, degrees": 0.01,
    "end of slip, m": 0.005,
    "time, s": 1e-4,
    "velocity, m/s": 1e-3,
    "spin, rad/s": 0.02,
    "energy lost, J": 0.01,
}
SHOTS = 50
PINS = 60 * body.FOOT
faults = []


def hold(what, found, limit):
    """A found error must stay within its limit; no number is no pass."""
    if not found <= limit:
        faults.append(f"{what}: {found:.2e} is over {limit:.0e}")


def apart(one, other, keys):
    return max(abs(one[k] - other[k]) for k in keys)


def direction(station):
    return degrees(atan2(station["vy"], station["vx"]))


def differences(ours, theirs):
    """Between the same station of two rolls."""
    return {
        "position, m": abs(ours["y"] - theirs["y"]),
        "angle, degrees": abs(direction(ours) - direction(theirs)),
        "time, s": abs(ours["t"] - theirs["t"]),
        "velocity, m/s": apart(ours, theirs, ("vx", "vy")),
        "spin, rad/s": apart(ours, theirs, ("wx", "wy", "wz")),
    }


def roll(shot, places, **how):
    ball = body.Ball(shot["mass"], shot["radius"], tuple(shot["moments"]), tuple(shot["offset"]))
    lane = body.Lane(*(shot[k] for k in ("oil", "ramp", "ratio", "inside", "taper", "mu_oil", "mu_dry")))
    pap, axes = body.released(*(shot[k] for k in ("pin", "phase", "turn", "rotation", "tilt")))
    return body.Roll(ball, lane, pap, axes, *(shot[k] for k in ("speed", "spin", "launch", "start")), places, **how)


def kinetic(found, station):
    """Energy of motion and height: mass centre, spin, and how high the mass centre stands over the ball's middle."""
    ball = found.ball
    d = ball.centre(body.axes_of(station["q"]))
    wd = body.cross((station["wx"], station["wy"], station["wz"]), d)
    g = (station["vx"] + wd[0], station["vy"] + wd[1], wd[2])
    spin = sum(i * w * w for i, w in zip(ball.moments, station["body"]))
    return (ball.mass * body.dot(g, g) + spin) / 2 + ball.mass * body.GRAVITY * d[2]


# --- what the integrator itself is held against

MACHINE = dict(
    mass=6.80388555, radius=0.109093, offset=[0, 0, 0], pin=0, phase=0, turn=0, speed=7.59968, spin=275 * pi / 30,
    rotation=radians(55), tilt=radians(13), launch=radians(-2), start=-0.15, oil=12.192, ramp=0, ratio=1, inside=10, taper=0,
    mu_oil=0.04, mu_dry=0.20,
)
ALONG = [15 * body.FOOT, 30 * body.FOOT, 45 * body.FOOT, 60 * body.FOOT]


def moments(*rg):
    return [MACHINE["mass"] * (k * body.INCH) ** 2 for k in rg]


def equal_moments():
    """A ball with equal moments, whatever the oil: slip keeps its direction, so where it ends in velocity is known, and the energy lost."""
    lane = dict(oil=12.0, ramp=1.1, ratio=4, inside=9, taper=3)
    found = roll(MACHINE | lane | dict(moments=moments(2.55, 2.55, 2.55), launch=radians(-1.5), start=-0.3), ALONG)
    beta = (2.55 * body.INCH / MACHINE["radius"]) ** 2
    v = (MACHINE["speed"] * cos(radians(1.5)), -MACHINE["speed"] * sin(radians(1.5)))
    w = [-MACHINE["spin"] * k for k in body.released(0, 0, 0, MACHINE["rotation"], MACHINE["tilt"])[0]]
    u = (v[0] - MACHINE["radius"] * w[1], v[1] + MACHINE["radius"] * w[0])
    share = beta / (1 + beta)
    hold("equal moments: velocity", apart(found.last, dict(zip(("vx", "vy"), (v[k] - share * u[k] for k in (0, 1)))), ("vx", "vy")), 2e-7)
    hold("equal moments: energy", abs(found.lost - MACHINE["mass"] / 2 * share * hypot(*u) ** 2), 1e-6)
    hold("equal moments: spin about the upright", abs(found.last["wz"] - w[2]), 1e-9)


def one_friction():
    """One friction: the path is a parabola until slip ends, at a known time and place."""
    mu = 0.11
    found = roll(MACHINE | dict(moments=moments(2.6, 2.6, 2.6), oil=0, mu_dry=mu), ALONG)
    beta = (2.6 * body.INCH / MACHINE["radius"]) ** 2
    v = (MACHINE["speed"] * cos(MACHINE["launch"]), MACHINE["speed"] * sin(MACHINE["launch"]))
    w = [-MACHINE["spin"] * k for k in body.released(0, 0, 0, MACHINE["rotation"], MACHINE["tilt"])[0]]
    u = (v[0] - MACHINE["radius"] * w[1], v[1] + MACHINE["radius"] * w[0])
    time = hypot(*u) / (mu * body.GRAVITY * (1 + 1 / beta))
    place = [v[k] * time - mu * body.GRAVITY / 2 * u[k] / hypot(*u) * time**2 for k in (0, 1)]
    ends = found.slip_ends
    hold("one friction: time to the end of slip", abs(ends["t"] - time), 1e-7)
    hold("one friction: place of it", hypot(ends["x"] - place[0], ends["y"] - MACHINE["start"] - place[1]), 1e-6)


def oil_by_place():
    """Friction along one straight line, integrated: mean friction over the way a ball slips straight down the lane without spin."""
    lane = dict(oil=12.0, ramp=3.0, ratio=5, inside=12, taper=6)
    found = roll(MACHINE | lane | dict(moments=moments(2.6, 2.6, 2.6), spin=0, launch=0, start=-11 * body.BOARD), [11.0])

    def friction(x):
        # Board 9, three boards outside board 12 of a taper of six: half of what the ratio takes from the oil.
        in_oil = 0.04 + 0.16 * (1 - 1 / 5) / 2
        return in_oil + (0.20 - in_oil) * min(1, max(0, (x - 9.0) / 3.0))

    end = found.stations[11.0]
    # v dv = -mu g dx.
    slowed = sqrt(MACHINE["speed"] ** 2 - 2 * body.GRAVITY * quad(friction, 0, 11, points=(9,), epsabs=1e-12)[0])
    hold("friction by place: speed at 11 m", abs(end["vx"] - slowed), 1e-8)
    hold("friction by place: slips there", 0.0 if end["mode"] == "slip" else 1.0, 0)


def no_friction():
    """Euler's equations without a torque, three moments: Jacobi's elliptic functions."""
    i1, i2, i3 = moments(2.48, 2.515, 2.535)
    shot = MACHINE | dict(moments=[i1, i2, i3], mu_oil=0, mu_dry=0, pin=radians(40), spin=45.0, launch=0)
    found = roll(shot, np.linspace(0.5, 18.0, 36))
    # With axis 3 in the plane of PAP and pin, the spin has no part along the middle axis to begin with.
    w1, w3 = -45 * cos(radians(40)), 45 * sin(radians(40))
    twice, square = i1 * w1**2 + i3 * w3**2, (i1 * w1) ** 2 + (i3 * w3) ** 2
    low_first = square > twice * i2
    a, c = (i1, i3) if low_first else (i3, i1)
    rate = sqrt((c - i2) * (square - twice * a) / (i1 * i2 * i3))
    k2 = (i2 - a) * (twice * c - square) / ((c - i2) * (square - twice * a))
    for station in found.stations.values():
        sn, cn, dn, _ = ellipj(rate * station["t"], k2)
        middle = sqrt((twice * c - square) / (i2 * (c - i2))) * sn
        by_cn = sqrt((twice * c - square) / (a * (c - a))) * cn
        by_dn = sqrt((square - twice * a) / (c * (c - a))) * dn
        one, three = (by_cn, by_dn) if low_first else (by_dn, by_cn)
        error = max(abs(abs(f) - abs(k)) for f, k in zip(station["body"], (one, middle, three)))
        hold(f"no friction: spin in the ball at {station['t']:.2f} s", error, 1e-8)


def invariants():
    """What any ball must keep: with the mass centre in the middle, angular momentum about a fixed point at lane height while it slips and
    rolls; and always, energy. Then rolling as its momentum has it against the equation for its spin."""
    shots = {
        "slides, then rolls": dict(moments=moments(2.48, 2.51, 2.535), pin=radians(40), phase=0.4, turn=1.1, mu_dry=0.25),
        "slips again": dict(moments=moments(2.5, 2.56, 2.56), pin=radians(45)),
        "mass centre off": dict(moments=moments(2.48, 2.51, 2.535), pin=radians(60), phase=2.0, turn=0.3, offset=[4e-4, -5e-4, 7e-4], mu_dry=0.22),
    }
    for name, change in shots.items():
        shot = MACHINE | change
        found = roll(shot, np.linspace(0.5, 18.288, 37))
        if (found.slips_again > 0) != (name == "slips again") and not any(shot["offset"]):
            faults.append(f"{name}: it slips again {found.slips_again} times")
        stations = list(found.stations.values())
        energies = [kinetic(found, s) + s["lost"] for s in stations]
        hold(f"{name}: energy", max(energies) - min(energies), 1e-8)
        if any(shot["offset"]):
            continue
        kept = []
        for s in stations:
            spin = found.ball.turning(body.axes_of(s["q"]), (s["wx"], s["wy"], s["wz"]))
            push = shot["mass"] * shot["radius"]
            kept.append((spin[0] - push * s["vy"], spin[1] + push * s["vx"], spin[2]))
        hold(f"{name}: angular momentum", np.ptp(kept, axis=0).max(), 1e-8)


def published(rows):
    """The reference trajectories, each within the tolerances in the file."""
    cases = {}
    for row in rows:
        cases.setdefault(row["case"], []).append({k: float(v) if v else None for k, v in row.items() if k not in ("case", "text", "mode")})
    for name, stations in cases.items():
        first = stations[0]
        whole = first["x_switch_m"] is None
        shot = dict(
            mass=first["weight_kg"], radius=first["radius_m"], moments=[first[k] for k in ("I1", "I2", "I3")], offset=[0, 0, 0],
            pin=radians(first["pin_pap_deg"] or 0), phase=radians(first["pin_phase_deg"] or 0), turn=radians(first["mb_turn_deg"] or 0),
            speed=first["v0_mps"], spin=first["rpm"] * pi / 30, rotation=radians(first["rot_deg"]), tilt=radians(first["tilt_deg"]),
            launch=radians(first["launch_deg"]), start=first["y0_m"], oil=0 if whole else first["x_switch_m"], ramp=0, ratio=1,
            inside=10, taper=0, mu_oil=first["mu1"], mu_dry=first["mu1"] if whole else first["mu2"],
        )
        places = [s["station_ft"] * body.FOOT for s in stations]
        found = roll(shot, places)
        for place, s in zip(places, stations):
            wanted = {"t": s["t_s"], "y": s["y_m"], **{k: s[k] for k in ("vx", "vy", "wx", "wy", "wz")}}
            limits = {"position": s["tol_pos_m"], "angle": s["tol_angle_deg"], "time": s["tol_time_s"], "velocity": s["tol_vel_mps"], "spin": s["tol_omega_radps"]}
            for what, error in differences(found.stations[place], wanted).items():
                hold(f"{name} at {s['station_ft']} ft, {what}", error, limits[what.split(",")[0]])
        hold(f"{name}, energy lost", abs(found.lost - first["energy_lost_J"]), first["tol_energy_J"])
        if first["x_roll_m"] is None:
            hold(f"{name}, slip ends", 0 if found.slip_ends is None else 1, 0)
        else:
            hold(f"{name}, end of slip", abs(found.slip_ends["x"] - first["x_roll_m"]), first["tol_transition_m"])
    return len(cases)


# --- the library's rolls

def compare(shot):
    """The worst difference of each kind over a shot's stations, what can't be put in a number, and what rolling asked for."""
    # Where it ends, at the pins or at the lane's side, is one more station.
    last = shot["last"]
    stations = [s for s in shot["stations"] if s["x"] < last["x"] - 1e-9] + [last]
    try:
        found = roll(shot, [s["x"] for s in stations])
    except ArithmeticError as error:
        return {}, [str(error)], None
    worst, said = {}, []
    for station, ours in zip(stations, found.stations.values(), strict=True):
        for what, error in differences(station, ours).items():
            worst[what] = error if not error <= worst.get(what, 0.0) else worst.get(what, 0.0)
    worst["energy lost, J"] = abs(shot["energy_lost"] - found.lost)
    side = abs(found.last["y"]) - body.WIDTH / 2
    if abs(last["x"] - PINS if shot["ending"] == "pins" else side) > LIMITS["position, m"]:
        said.append(f"ends at the {shot['ending']}, at {last['x']} m down and {last['y']} m across")
    if found.widest > body.WIDTH / 2 + LIMITS["position, m"]:
        said.append(f"is {found.widest} m out on its way")
    if (found.slip_ends is None) != (shot["slip_ends"] is None):
        said.append(f"slip ends: {shot['slip_ends']} against {found.slip_ends}")
    elif found.slip_ends is not None:
        worst["end of slip, m"] = abs(found.slip_ends["x"] - shot["slip_ends"]["x"])
    return worst, said, (found.slips_again, found.asked)


def main():
    shots_file, csv_file = sys.argv[1:]
    for check in (equal_moments, one_friction, oil_by_place, no_friction, invariants):
        check()
    with open(csv_file, newline="") as rows:
        cases = published(csv.DictReader(rows))
    hold("reference trajectories wanting", max(0, 8 - cases), 0)
    print(f"The integrator meets its closed forms, what a rigid body keeps, and {cases} reference trajectories." if not faults else "The integrator itself is at fault.")

    with open(shots_file) as lines:
        shots = [json.loads(line) for line in lines]
    hold("shots wanting", max(0, SHOTS - len(shots)), 0)
    for what, has in {
        "three moments": lambda s: len(set(s["moments"])) == 3,
        "the mass centre off": lambda s: any(s["offset"]),
        "more oil inside": lambda s: s["ratio"] > 1,
        "a ramp": lambda s: s["ramp"] > 0,
        "all the way to the pins": lambda s: s["ending"] == "pins",
        "an end of slip": lambda s: s["slip_ends"] is not None,
    }.items():
        hold(f"shots wanting with {what}", max(0, SHOTS // 5 - sum(map(has, shots))), 0)
    worst, again = {}, 0
    with ProcessPoolExecutor() as pool:
        for k, (shot, (errors, said, more)) in enumerate(zip(shots, pool.map(compare, shots))):
            beyond = list(said)
            for what, error in errors.items():
                if not error <= worst.get(what, (-1.0, 0))[0]:
                    worst[what] = (error, k)
                if not error <= LIMITS[what]:
                    beyond.append(f"{what}: {error:.2e}")
            again += more is not None and more[0] > 0
            if beyond:
                told = {key: value for key, value in shot.items() if key not in ("stations", "slip_ends", "last")}
                faults.append(f"shot {k}: {'; '.join(beyond)} (slips again, most friction asked: {more})\n    {json.dumps(told)}")
    print(f"{len(shots)} shots, {again} of them slip again after rolling. Worst differences:")
    for what, limit in LIMITS.items():
        error, k = worst.get(what, (float("nan"), "-"))
        print(f"  {what:18} {error:9.2e} (limit {limit:g}), shot {k}")
        if what not in worst:
            faults.append(f"{what}: never compared")
    for fault in faults:
        print(fault, file=sys.stderr)
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
