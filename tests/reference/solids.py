"""Solids as meshes, and the closed forms they are held against.

A drilled hole is what the sphere shares with everything above the flat bottom of an endless upright prism along the hole's axis.
The prism stands on a polygon with its corners on the true section, the sphere on a finely divided icosahedron with its corners on the
true sphere: both lie inside the true solid, and their errors fall with the square of the edge length.
"""

import functools

import manifold3d
import numpy as np
import trimesh

# Subdivisions of the sphere and corners of a round section, each step twice as fine.
LEVELS = ((5, 128), (6, 256), (7, 512))


def solid(vertices, faces):
    found = manifold3d.Manifold(manifold3d.Mesh64(np.array(vertices, np.float64), np.array(faces, np.uint64)))
    if found.status() != manifold3d.Error.NoError:
        raise SystemExit(f"a mesh encloses nothing: {found.status()}")
    return found


@functools.lru_cache(maxsize=len(LEVELS))
def ball(radius, level):
    """Kept, since it takes longest to build."""
    mesh = trimesh.creation.icosphere(subdivisions=LEVELS[level][0], radius=radius)
    return solid(mesh.vertices, mesh.faces)


def outline(section, corners):
    """The section's corners as (along the wide direction, aside), counter-clockwise, and half the run of an oval."""
    wide, narrow = section.get("oval", (section.get("round"),) * 2)
    turn = 2 * np.pi * np.arange(corners) / corners
    points = narrow / 2 * np.column_stack((np.cos(turn), np.sin(turn)))
    run = (wide - narrow) / 2
    if run > 0:
        # Two half circles; the quarter points stand twice, once at each end of a straight side.
        right = points[np.cos(turn) > -1e-9]
        left = points[np.cos(turn) < 1e-9]
        right = right[np.argsort(np.arctan2(right[:, 1], right[:, 0]))]
        left = left[np.argsort(np.arctan2(left[:, 1], left[:, 0]) % (2 * np.pi))]
        points = np.vstack((right + (run, 0), left - (run, 0)))
    return points


def prism(hole, depth, corners):
    """The endless prism above the hole's bottom, cut off well outside the ball."""
    mouth, axis, wide = (np.array(hole[key]) for key in ("mouth", "axis", "wide"))
    aside = np.cross(-axis, wide)
    ring = outline(hole["section"], corners)
    flat = ring[:, :1] * wide + ring[:, 1:] * aside
    bottom, top = mouth + depth * axis, mouth - 2.0 * axis
    count = len(flat)
    vertices = np.vstack((flat + bottom, flat + top, [bottom, top]))
    i = np.arange(count)
    j = (i + 1) % count
    under, over = np.full(count, 2 * count), np.full(count, 2 * count + 1)
    faces = np.vstack(
        (
            np.column_stack((i, j, j + count)),
            np.column_stack((i, j + count, i + count)),
            np.column_stack((under, j, i)),
            np.column_stack((over, i + count, j + count)),
        )
    )
    return solid(vertices, faces)


def moments(found):
    """Volume, first moment and second moment (the integral of x times x transposed) about the ball's centre."""
    mesh = found.to_mesh64()
    mesh = trimesh.Trimesh(mesh.vert_properties[:, :3], mesh.tri_verts, process=False)
    if not mesh.is_watertight:
        raise SystemExit("a mesh leaks: its volume would mean nothing")
    properties = mesh.mass_properties
    volume, centre, inertia = properties.volume, np.array(properties.center_mass), np.array(properties.inertia)
    central = np.trace(inertia) / 2 * np.eye(3) - inertia
    return volume, volume * centre, central + volume * np.outer(centre, centre)


def drilled(radius, hole, level):
    """What the drill takes out, and the slug, sleeve or insert that is put back around the bore (None for a bare hole)."""
    corners = LEVELS[level][1]
    cutter = prism(hole, hole["depth"], corners)
    out = ball(radius, level) ^ cutter
    bore = hole["bore"]
    if bore is None:
        return moments(out), None
    # Where bore and hole end in the same plane, nothing is left below the bore: it may as well pass through.
    flush = bore["axis"] == hole["axis"] and bore["depth"] == hole["depth"]
    inside = prism(bore, bore["depth"] + (0.1 if flush else 0.0), corners)
    return moments(out), moments(out - inside)


def straight(radius, size, depth):
    """Closed form of a round hole aimed at the centre, in its own frame: z out of the ball.

    With r half the size, b = R - depth the height of the bottom and h = sqrt(R^2 - r^2) that of the rim, integrate over rings of
    radius s from 0 to r, each 2 pi s ds wide and reaching from b to sqrt(R^2 - s^2):

        volume          2 pi int s (sqrt(R^2 - s^2) - b) ds             = 2 pi / 3 (R^3 - h^3) - pi r^2 b
        int z dV        pi int s (R^2 - s^2 - b^2) ds                   = pi / 2 ((R^2 - b^2) r^2 - r^4 / 2)
        int z^2 dV      2 pi / 3 int s ((R^2 - s^2)^(3/2) - b^3) ds     = 2 pi / 3 ((R^5 - h^5) / 5 - b^3 r^2 / 2)
        int x^2 dV      pi int s^3 (sqrt(R^2 - s^2) - b) ds             = pi (R^2 (R^3 - h^3) / 3 - (R^5 - h^5) / 5 - b r^4 / 4)

    The last one uses u = R^2 - s^2: int s^3 sqrt(R^2 - s^2) ds = 1/2 int (R^2 - u) sqrt(u) du.
    """
    r, b = size / 2, radius - depth
    h = np.sqrt(radius**2 - r**2)
    cubes, fifths = radius**3 - h**3, radius**5 - h**5
    volume = 2 * np.pi / 3 * cubes - np.pi * r**2 * b
    first = np.pi / 2 * ((radius**2 - b**2) * r**2 - r**4 / 2)
    along = 2 * np.pi / 3 * (fifths / 5 - b**3 * r**2 / 2)
    aside = np.pi * (radius**2 * cubes / 3 - fifths / 5 - b * r**4 / 4)
    return volume, first, along, aside
