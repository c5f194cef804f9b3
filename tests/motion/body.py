"""A rigid ball on a lane, integrated on its own account: nothing here is shared with the library.

The state is momentum, not spin: velocity of the mass centre and angular momentum about it while the ball slips, angular momentum about
the point of contact while it rolls. Both are Newton's and Euler's laws as any textbook of mechanics has them. Lane axes: x down the lane,
y to the left, z up; SI units throughout.

A run is cut wherever its equations change: at the edges of the oil, where slip ends, and where rolling asks for more friction than there
is. Within a piece they are smooth, which is what an integrator of order eight needs. Slip ends at 1e-7 m/s, since its direction has no
meaning at none.
"""

from dataclasses import dataclass
from math import cos, fabs, hypot, sin, sqrt

from scipy.integrate import solve_ivp

GRAVITY = 9.80665
FOOT, INCH = 0.3048, 0.0254
WIDTH = 41.5 * INCH
BOARD = WIDTH / 39
# Slip that counts as none, and the push that a ball gets when it stops rolling, m/s.
NO_SLIP, FIRST_SLIP = 1e-7, 1e-6
# A piece may not step over an edge that it leaves and comes back to.
LONGEST_STEP = 0.02


def dot(a, b):
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a, b):
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


def mix(*terms):
    """The sum of (number, vector) pairs."""
    return tuple(sum(k * v[i] for k, v in terms) for i in range(3))


def unit(a):
    return mix((1 / sqrt(dot(a, a)), a))


def solve(m, b):
    """x of m x = b, by Cramer's rule; m is symmetric, as three rows."""
    c0, c1, c2 = cross(m[1], m[2]), cross(m[2], m[0]), cross(m[0], m[1])
    return mix(*((k / dot(m[0], c0), c) for k, c in zip(b, (c0, c1, c2))))


@dataclass
class Lane:
    """Friction by place: oil as far as `oil`, thinning over its last `ramp`; whole between the boards `inside` of either side, and over
    `taper` boards outside them down to one part in `ratio` of what it takes off the friction."""

    oil: float
    ramp: float
    ratio: float
    inside: float
    taper: float
    mu_oil: float
    mu_dry: float

    def edges_down(self):
        return self.oil - self.ramp, self.oil

    def edges_across(self):
        return (20 - self.inside) * BOARD, (20 - self.inside + self.taper) * BOARD

    def friction(self, zone, x, y):
        """`zone` is how many edges down the lane, and how many across, lie behind; places do not decide it, so that it is smooth."""
        begins, ends = self.edges_down()
        inner, outer = self.edges_across()
        gone = (0.0, (x - begins) / (ends - begins) if ends > begins else 0.0, 1.0)[zone[0]]
        thin = (0.0, (fabs(y) - inner) / (outer - inner) if outer > inner else 0.0, 1.0)[zone[1]]
        saved = self.mu_dry - self.mu_oil
        in_oil = self.mu_oil + thin * saved * (1 - 1 / self.ratio)
        return (1 - gone) * in_oil + gone * self.mu_dry

    def zone(self, x, y):
        down = sum(x >= edge for edge in self.edges_down())
        across = sum(fabs(y) > edge for edge in self.edges_across())
        return down, across


@dataclass
class Ball:
    mass: float
    radius: float
    moments: tuple
    offset: tuple

    def spin(self, axes, turning):
        """Angular velocity from angular momentum about the mass centre."""
        return mix(*((dot(turning, e) / i, e) for e, i in zip(axes, self.moments)))

    def turning(self, axes, spin):
        return mix(*((dot(spin, e) * i, e) for e, i in zip(axes, self.moments)))

    def centre(self, axes):
        """From the middle to the mass centre."""
        return mix(*zip(self.offset, axes))

    def about_contact(self, axes, arm):
        """The inertia tensor about the contact, from which `arm` leads to the mass centre."""
        square = dot(arm, arm)
        return [
            [
                sum(e[j] * e[k] * i for e, i in zip(axes, self.moments))
                + self.mass * ((square if j == k else 0.0) - arm[j] * arm[k])
                for k in range(3)
            ]
            for j in range(3)
        ]


def axes_of(q):
    """The ball's axes in the lane, from a quaternion of any length."""
    a, b, c, d = q
    n = a * a + b * b + c * c + d * d
    return (
        ((a * a + b * b - c * c - d * d) / n, 2 * (b * c + a * d) / n, 2 * (b * d - a * c) / n),
        (2 * (b * c - a * d) / n, (a * a - b * b + c * c - d * d) / n, 2 * (c * d + a * b) / n),
        (2 * (b * d + a * c) / n, 2 * (c * d - a * b) / n, (a * a - b * b - c * c + d * d) / n),
    )


def quaternion_of(axes):
    """The turn that takes x, y, z to these axes; by the largest of its four parts, so that nothing small is divided by."""
    (xx, xy, xz), (yx, yy, yz), (zx, zy, zz) = axes
    squares = (1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz)
    rows = (
        (squares[0], yz - zy, zx - xz, xy - yx),
        (yz - zy, squares[1], xy + yx, zx + xz),
        (zx - xz, xy + yx, squares[2], yz + zy),
        (xy - yx, zx + xz, yz + zy, squares[3]),
    )
    best = rows[squares.index(max(squares))]
    size = sqrt(sum(k * k for k in best))
    return tuple(k / size for k in best)


def turned(q, spin):
    """How the quaternion changes: half of spin times q, the spin in the lane's axes."""
    a, b, c, d = q
    x, y, z = spin
    return (
        (-x * b - y * c - z * d) / 2,
        (x * a + y * d - z * c) / 2,
        (y * a + z * b - x * d) / 2,
        (z * a + x * c - y * b) / 2,
    )


def released(pin, phase, turn, rotation, tilt):
    """The direction of the PAP, and the ball's axes, at the release."""
    pap = (cos(tilt) * sin(rotation), -cos(tilt) * cos(rotation), sin(tilt))
    # For a PAP straight up there is no such thing as above it.
    above = unit((-pap[2] * pap[0], -pap[2] * pap[1], 1 - pap[2] ** 2))
    to_pin = mix((cos(phase), above), (sin(phase), cross(pap, above)))
    low = mix((cos(pin), pap), (sin(pin), to_pin))
    along = mix((-sin(pin), pap), (cos(pin), to_pin))
    high = mix((cos(turn), along), (sin(turn), cross(low, along)))
    return pap, (low, cross(high, low), high)


class Roll:
    """One shot from the foul line to the farthest of `places`."""

    def __init__(
        self, ball, lane, pap, axes, speed, spin, launch, start, places,
        rtol=1e-11, atol=1e-13, no_slip=NO_SLIP, method="DOP853", most=4000,
    ):
        self.ball, self.lane, self.most = ball, lane, most
        self.rtol, self.atol, self.no_slip, self.method = rtol, atol, no_slip, method
        self.places = list(places)
        self.stations, self.slip_ends, self.slips_again, self.asked = {}, None, 0, 0.0
        self.widest = 0.0
        self.passed = 0
        w = mix((-spin, pap))
        self.pieces = []
        self.zone = list(lane.zone(0.0, start))
        # Speed and direction are those of the mass centre; it stands over or beside the middle, which starts at the foul line.
        velocity = (speed * cos(launch), speed * sin(launch))
        self.first = [0.0, start, *velocity, *ball.turning(axes, w), *quaternion_of(axes), 0.0]
        self.lost = 0.0
        self.run(0.0, self.first)

    # What slips: x, y, velocity of the mass centre along x and y, angular momentum, quaternion, energy lost.
    def slipping(self, s):
        q = s[7:11]
        axes = axes_of(q)
        w = self.ball.spin(axes, s[4:7])
        d = self.ball.centre(axes)
        wd = cross(w, d)
        return axes, w, d, wd, (s[2] - wd[0], s[3] - wd[1])

    def slip_of(self, s):
        _, w, _, _, v = self.slipping(s)
        return v[0] - self.ball.radius * w[1], v[1] + self.ball.radius * w[0]

    def pressed(self, axes, w, d, wd, push):
        """How hard the lane presses, if friction is so many times that, in the direction of `push`: the middle keeps its height."""
        ball = self.ball
        arm = (-d[0], -d[1], -d[2] - ball.radius)
        by_force = ball.spin(axes, cross(arm, (push[0], push[1], 1.0)))
        left = ball.spin(axes, cross(ball.turning(axes, w), w))
        lift = GRAVITY + cross(left, d)[2] + cross(w, wd)[2]
        return ball.mass * lift / (1 - ball.mass * cross(by_force, d)[2])

    def slide(self, _, s):
        ball = self.ball
        axes, w, d, wd, v = self.slipping(s)
        ux, uy = v[0] - ball.radius * w[1], v[1] + ball.radius * w[0]
        u = hypot(ux, uy)
        mu = self.lane.friction(self.zone, s[0], s[1])
        push = (-mu * ux / u, -mu * uy / u) if u > 0 else (0.0, 0.0)
        n = self.pressed(axes, w, d, wd, push)
        force = (n * push[0], n * push[1], n)
        arm = (-d[0], -d[1], -d[2] - ball.radius)
        return (*v, force[0] / ball.mass, force[1] / ball.mass, *cross(arm, force), *turned(s[7:11], w), mu * n * u)

    # What rolls: x, y, angular momentum about the contact, quaternion.
    def rolling(self, s):
        axes = axes_of(s[5:9])
        d = self.ball.centre(axes)
        arm = (d[0], d[1], d[2] + self.ball.radius)
        return axes, d, arm, solve(self.ball.about_contact(axes, arm), s[2:5])

    def turn_over(self, _, s):
        ball = self.ball
        _, d, arm, w = self.rolling(s)
        v = (ball.radius * w[1], -ball.radius * w[0], 0.0)
        weight = mix((-ball.mass, cross(v, cross(w, d))), (-ball.mass * GRAVITY, (arm[1], -arm[0], 0.0)))
        return (v[0], v[1], *weight, *turned(s[5:9], w))

    def needed(self, s):
        """The force of the lane on a ball that rolls."""
        ball = self.ball
        axes, d, arm, w = self.rolling(s)
        wd = cross(w, d)
        inward = cross(w, wd)
        gyre = cross(ball.turning(axes, w), w)
        pull = cross(arm, (inward[0], inward[1], inward[2] + GRAVITY))
        # About the contact: I w' = I w x w - m arm x (g z + w x (w x d)).
        faster = solve(ball.about_contact(axes, arm), mix((1.0, gyre), (-ball.mass, pull)))
        a = mix((1.0, cross(faster, arm)), (1.0, inward))
        return ball.mass * a[0], ball.mass * a[1], ball.mass * (a[2] + GRAVITY)

    def spare(self, s):
        """What friction there is over what rolling asks for, as a share of the load; less than zero if it can't roll."""
        fx, fy, n = self.needed(s)
        return self.lane.friction(self.zone, s[0], s[1]) - hypot(fx, fy) / n

    def station(self, t, mode, s, lost):
        if mode == "slip":
            axes, w, _, _, v = self.slipping(s)
            q = s[7:11]
        else:
            axes, _, _, w = self.rolling(s)
            q = s[5:9]
            v = (self.ball.radius * w[1], -self.ball.radius * w[0])
        return dict(
            x=s[0], t=t, y=s[1], vx=v[0], vy=v[1], wx=w[0], wy=w[1], wz=w[2], mode=mode, lost=lost, q=tuple(q),
            body=tuple(dot(w, e) for e in axes),
        )

    def leaving(self):
        """Events: where it leaves its zone (which edge, in what sense), each falling through zero. Two edges in one place are one."""
        down, across = self.zone
        along, aside = self.lane.edges_down(), self.lane.edges_across()
        whole_down = 1 if self.lane.ramp > 0 else 2
        whole_across = 1 if self.lane.taper > 0 else 2
        found = []
        if down < 2:
            found.append((0, whole_down, lambda t, s, e=along[down]: e - s[0]))
        if self.lane.ratio > 1 and across < 2:
            found.append((1, whole_across, lambda t, s, e=aside[across]: e - fabs(s[1])))
        if self.lane.ratio > 1 and across > 0:
            found.append((1, -whole_across, lambda t, s, e=aside[across - 1]: fabs(s[1]) - e))
        return found

    def run(self, t, state):
        mode, far = "slip", max(self.places)
        for _ in range(self.most):
            u = hypot(*self.slip_of(state)) if mode == "slip" else 0.0
            if mode == "slip" and u <= self.no_slip * 1.001:
                rolled = self.to_rolling(state)
                if self.spare(rolled) >= 0:
                    if self.slip_ends is None:
                        self.slip_ends = self.station(t, "roll", rolled, self.lost)
                    mode, state = "roll", rolled
                else:
                    state = self.to_slipping(rolled)
            elif mode == "roll" and self.spare(state) < -1e-10:
                mode, state = "slip", self.to_slipping(state)
                self.slips_again += 1
            t, state, over = self.piece(t, state, mode, far)
            if over:
                self.last = self.station(t, mode, state, self.lost)
                return
        raise ArithmeticError("it never comes to the pins")

    def to_rolling(self, s):
        """A last push at the contact takes what slip is left; angular momentum about the contact does not feel it."""
        ball = self.ball
        axes, _, d, wd, _ = self.slipping(s)
        g = cross((d[0], d[1], d[2] + ball.radius), (s[2], s[3], wd[2]))
        return [s[0], s[1], *mix((1.0, s[4:7]), (ball.mass, g)), *s[7:11]]

    def to_slipping(self, s):
        """It slips against the friction it asked for; a first push at the contact gives that a direction."""
        ball = self.ball
        axes, _, arm, w = self.rolling(s)
        fx, fy, _ = self.needed(s)
        push = (-FIRST_SLIP * fx / hypot(fx, fy), -FIRST_SLIP * fy / hypot(fx, fy), 0.0)
        v = mix((1.0, cross(w, arm)), (1.0, push))
        turning = mix((1.0, ball.turning(axes, w)), (-ball.mass, cross(arm, push)))
        return [s[0], s[1], v[0], v[1], *turning, *s[5:9], self.lost]

    def piece(self, t, state, mode, far):
        edges = self.leaving()
        events = [e for _, _, e in edges]
        if mode == "slip":
            events.append(lambda t, s: hypot(*self.slip_of(s)) - self.no_slip)
        else:
            events.append(lambda t, s: self.spare(s) + 2e-10)
        events.append(lambda t, s: far - s[0])
        for event in events:
            event.terminal, event.direction = True, -1
        ahead = self.places[self.passed:]
        for place in ahead:
            events.append(lambda t, s, p=place: s[0] - p)
        found = solve_ivp(
            self.slide if mode == "slip" else self.turn_over, (t, t + 60.0), state, method=self.method,
            rtol=self.rtol, atol=self.atol, events=events, max_step=LONGEST_STEP,
        )
        if found.status != 1:
            raise ArithmeticError(f"stuck at x = {found.y[0][-1]}: {found.message}")
        self.pieces.append((mode, tuple(self.zone), t, float(found.t[-1])))
        count = len(edges) + 2
        for place, times, states in zip(ahead, found.t_events[count:], found.y_events[count:]):
            if len(times):
                self.keep(place, float(times[0]), mode, [float(k) for k in states[0]])
        self.widest = max(self.widest, float(abs(found.y[1]).max()))
        t, state = float(found.t[-1]), [float(k) for k in found.y[:, -1]]
        if mode == "slip":
            self.lost = state[11]
        else:
            self.asked = max(self.asked, *(
                hypot(*f[:2]) / f[2] for f in (self.needed([float(k) for k in s]) for s in found.y.T)
            ))
        hits = found.t_events[:count]
        for (which, step, _), times in zip(edges, hits):
            if len(times):
                self.zone[which] += step
        # A place on an edge may lie a rounding behind the piece that ends there.
        if self.passed < len(self.places) and state[0] > self.places[self.passed] - 1e-9:
            self.keep(self.places[self.passed], t, mode, state)
        return t, state, bool(len(hits[count - 1]))

    def keep(self, place, t, mode, state):
        if place not in self.stations:
            self.passed += 1
            self.stations[place] = self.station(t, mode, state, state[11] if mode == "slip" else self.lost)
