"""Holds what spanwright computes for a drilled ball against solids built another way. Reads the JSON lines of `reference.rs`.

Tolerances are relative to the size of the reference: 2e-4 for the finest mesh (what the project promises), and 5e-6 for the two finest
meshes extrapolated to no edge length at all (Richardson, order 2). `order` is how fast the meshes come nearer to our number as their edges
get shorter: 2 if our number is right, near 0 if it is wrong by more than the meshes are.
"""

import json
import sys

import numpy as np

import solids
import walls

# Exact by definition.
OUNCES = 16.387064 / 28.349523125
MESH, EXTRAPOLATED = 2e-4, 5e-6
faults = []


def hold(what, found, limit):
    """A found error must stay within its limit; no number is no pass."""
    if not found <= limit:
        faults.append(f"{what}: {found:.2e} is over {limit:.0e}")


def apart(found, wanted):
    found, wanted = np.asarray(found), np.asarray(wanted)
    return np.linalg.norm(found - wanted) / np.linalg.norm(wanted)


def parts(solid):
    return solid["volume"], np.array(solid["first"]), np.array(solid["second"])


def features(solid):
    """What is compared, each on its own scale: volume, centroid, and second moment about the centroid, which sees the shape best."""
    volume, first, second = solid
    return volume, first / volume, second - np.outer(first, first) / volume


def against_meshes(name, ours, meshes):
    """One solid against the same at three resolutions: errors of volume, centroid and shape, the worst extrapolated one, the order."""
    fine_errors, far_errors, orders = [], [], []
    for k, what in enumerate(("volume", "centroid", "shape")):
        mine = features(ours)[k]
        wanted = [np.asarray(features(mesh)[k]) for mesh in meshes]
        errors = [apart(mine, mesh) for mesh in wanted]
        far = apart(mine, (4 * wanted[2] - wanted[1]) / 3)
        order = np.log2(errors[0] / errors[2]) / 2
        hold(f"{name}: {what}, finest mesh", errors[2], MESH)
        hold(f"{name}: {what}, extrapolated", far, EXTRAPOLATED)
        hold(f"{name}: {what}, order of convergence away from 2", abs(order - 2), 0.2)
        fine_errors.append(errors[2])
        far_errors.append(far)
        orders.append(order)
    return (*fine_errors, max(far_errors), min(orders))


def undrilled(ball, core):
    """The tensor of inertia about the ball's own mass centre, in the grip's frame."""
    low = core["rg_low"]
    high = low + core["differential"]
    between = high - core["intermediate"]
    pin = np.array(core["pin"])
    pin = pin / np.linalg.norm(pin)
    bias = np.array(core["mass_bias"] if core["mass_bias"] else np.eye(3)[np.abs(pin).argmin()])
    bias = bias - (bias @ pin) * pin
    bias = bias / np.linalg.norm(bias)
    axes = np.array([pin, np.cross(pin, bias), bias])
    return ball["ounces"] * axes.T @ np.diag(np.square([low, between, high])) @ axes


def inertia(second):
    return np.trace(second) * np.eye(3) - second


def shifted(mass, away):
    """What a mass at this distance adds to the inertia."""
    return mass * (away @ away * np.eye(3) - np.outer(away, away))


def finished(spec, pieces):
    """Mass, mass centre, inertia about it, and what drilling changed in the inertia, from the undrilled ball and signed pieces."""
    ball, core = spec["ball"], spec["core"]
    mass, moment = ball["ounces"], np.array(ball["moment"])
    before = undrilled(ball, core)
    about_origin = before + shifted(mass, moment / mass)
    for density, (volume, first, second) in pieces:
        weight = density * OUNCES
        mass, moment = mass + weight * volume, moment + weight * first
        about_origin = about_origin + weight * inertia(second)
    centre = moment / mass
    after = about_origin - shifted(mass, centre)
    return mass, centre, after, after - before


def whole_ball(name, spec, meshes, table):
    """The drilled ball against the core's RGs less the meshes."""
    pieces = []
    for (out, lining), hole in zip(meshes, spec["holes"]):
        pieces.append((-spec["density"], out))
        if lining:
            pieces.append((hole["bore"]["density"], lining))
    mass, centre, tensor, change = finished(spec, pieces)
    turning = spec["turning"]
    low, high = turning["rg_low"], turning["rg_high"]
    radii = np.array([low, high - turning["intermediate"], high])
    axes = np.array(turning["axes"])
    ours = spec["finished"]["ounces"] * axes.T @ np.diag(radii**2) @ axes
    principal = np.sqrt(np.linalg.eigvalsh(tensor) / mass)
    # What the drill changed is the small difference that counts; the whole ball would hide an error in it.
    gone = abs(mass - spec["ball"]["ounces"])
    errors = (
        abs(spec["finished"]["ounces"] - mass) / gone,
        apart(spec["finished"]["centre"], centre),
        max(apart(ours, tensor), apart(turning["tensor"], tensor)),
        apart(ours - undrilled(spec["ball"], spec["core"]), change),
        np.abs(radii / principal - 1).max(),
        abs(turning["differential"] - (principal[2] - principal[0])) / turning["differential"],
    )
    for what, error in zip(("mass gone", "mass centre", "inertia", "change of inertia", "RGs", "differential"), errors):
        hold(f"{name}: {what}", error, EXTRAPOLATED)
    hold(f"{name}: RG axes not square", np.abs(axes @ axes.T - np.eye(3)).max(), 1e-9)
    table.append((name, *errors))


def closed_forms(name, spec, table):
    """Straight round holes against the formula of `solids.straight`, in the hole's own frame."""
    for hole, solid in zip(spec["holes"], spec["removed"]):
        out = -np.array(hole["axis"])
        if "oval" in hole["section"] or np.linalg.norm(np.cross(out, hole["mouth"])) > 1e-12:
            continue
        volume, first, second = parts(solid)
        wanted = solids.straight(spec["radius"], hole["section"]["round"], hole["depth"])
        wanted_second = wanted[3] * np.eye(3) + (wanted[2] - wanted[3]) * np.outer(out, out)
        error = max(abs(volume / wanted[0] - 1), apart(first, wanted[1] * out), apart(second, wanted_second))
        hold(f"{name} {hole['name']}: closed form", error, 1e-10)
        table.append((f"{name} {hole['name']}", error))


def between_holes(name, spec, table):
    """Walls, spans and bridge by brute force."""
    holes, radius = spec["holes"], spec["radius"]
    for wall in spec["walls"]:
        one, other = (holes[k] for k in wall["between"])
        pair, least = f"{name} {one['name']}-{other['name']}", wall["least"]
        # Between the holes' middles, or straight across between the near edges on the ball.
        rims = 2 * radius * np.sin(walls.edge_gap(radius, one, other) / (2 * radius))
        brute = min(walls.of_strips(one, other), rims)
        true = walls.of_shells(radius, one, other)
        hold(f"{pair}: wall off the brute force", abs(least - brute), 1e-6)
        # A wall that is thinner in truth than we say would be drilled through.
        hold(f"{pair}: wall thicker than the true one", least - true, 1e-4)
        table.append((pair, least, least - brute, true - least))
    for span in spec["edges"]:
        one, other = (holes[k] if span["cut"] else holes[k]["bore"] or holes[k] for k in span["between"])
        arc = walls.edge_gap(radius, one, other)
        hold(f"{name} {span['what']}: from edge to edge", abs(arc - span["arc"]), 1e-6)


def show(title, heads, rows, formats):
    print(f"\n{title}")
    width = max((len(row[0]) for row in rows), default=0)
    print(" " * width, *(f"{head:>12}" for head in heads))
    for row in rows:
        cells = (f"{cell:12{digits}}" for cell, digits in zip(row[1:], formats))
        print(f"{row[0]:<{width}}", *cells)


def thinnest(gaps):
    """The thinnest wall of each spec."""
    found = {}
    for row in sorted(gaps, key=lambda row: row[1]):
        found.setdefault(row[0].split()[0], row)
    return [found[name] for name in dict.fromkeys(row[0].split()[0] for row in gaps)]


def leaning(spec):
    """At least two holes miss the ball's centre by a sixteenth of an inch or more."""
    misses = [np.linalg.norm(np.cross(hole["axis"], hole["mouth"])) for hole in spec["holes"]]
    return sum(miss > 1 / 16 for miss in misses) >= 2


def main(path):
    with open(path, encoding="utf-8") as lines:
        specs = [json.loads(line) for line in lines]
    meshed, balls, closed, gaps = [], [], [], []
    for spec in specs:
        name = spec["name"]
        levels = [[solids.drilled(spec["radius"], hole, level) for hole in spec["holes"]] for level in range(3)]
        rows = []
        for k, hole in enumerate(spec["holes"]):
            for part, key, solid in ((0, "removed", "hole"), (1, "back", "lining")):
                if spec[key][k]:
                    meshes = [level[k][part] for level in levels]
                    rows.append(against_meshes(f"{name} {hole['name']} {solid}", parts(spec[key][k]), meshes))
        columns = list(zip(*rows))
        meshed.append((name, len(rows), *(max(column) for column in columns[:4]), min(columns[4])))
        # Extrapolated, piece by piece and number by number.
        best = [
            tuple(
                fine and tuple((4 * np.asarray(f) - m) / 3 for f, m in zip(fine, middle))
                for fine, middle in zip(levels[2][k], levels[1][k])
            )
            for k in range(len(spec["holes"]))
        ]
        whole_ball(name, spec, best, balls)
        closed_forms(name, spec, closed)
        between_holes(name, spec, gaps)
    heads = ("solids", "volume", "centroid", "shape", "extrapolated", "order")
    show("Holes and linings against meshes: worst relative errors", heads, meshed, ("d", *(".1e",) * 4, ".3f"))
    heads = ("mass gone", "mass centre", "inertia", "its change", "RGs", "differential")
    show("Drilled balls against extrapolated meshes: relative errors", heads, balls, (".1e",) * 6)
    show("Straight holes against the closed form: worst relative error", ("",), closed, (".1e",))
    show("Thinnest walls, in", ("wall", "off brute", "true, over"), thinnest(gaps), (".4f", ".1e", ".5f"))
    print(f"\n{len(specs)} specs, {sum(row[1] for row in meshed)} solids, {len(gaps)} walls")
    oblique = sum(leaning(spec) for spec in specs)
    if oblique < 12:
        faults.append(f"only {oblique} oblique specs")
    if not closed:
        faults.append("no straight hole to hold against the closed form")
    for fault in faults:
        print(f"FAULT {fault}", file=sys.stderr)
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
