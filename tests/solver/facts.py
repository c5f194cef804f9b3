"""The facts as a theorem prover sees them, from `spanwright facts --json` and from what each fact says it means.

A fact is a number of steps, or a set of bits, and whether it is known. What follows from other facts is written here anew from
the facts' stated meaning. What comes out of the geometry of the ball, of the mechanics of its roll, and prices, are free in their ranges.
"""

import csv
import json
import re
import subprocess
from fractions import Fraction

import yaml
import z3

NEGATIVE = {"R": "F", "L": "R", "down": "up"}


def number(text):
    """The size in `1 3/4 in less`, `$1,200.50`, `60%`, `0.020`, `2 R`, and its sign word if it has one."""
    words = text.replace("$", "").replace("%", "").replace(",", "").split()
    size, sign, suffix = Fraction(0), 1, None
    for word in words:
        if re.fullmatch(r"[+-]?\d+(\.\d+)?", word) or re.fullmatch(r"\d+/\d+", word):
            size += Fraction(word)
        elif word in ("less", "under"):
            sign = -1
        elif word in ("R", "L", "F", "up", "down"):
            suffix = word
    return sign * size, suffix


class Fact:
    """A fact: its kind and its range in steps."""

    def __init__(self, stated):
        self.name, self.kind, self.origin = stated["name"], stated["kind"], stated["origin"]
        self.words = ["no", "yes"] if self.kind == "yes or no" else stated["values"]
        self.subject = stated["subject"]
        if self.kind == "number":
            self.unit, self.forward = number(stated["step"])
            self.stated_suffix = "$" if "$" in stated["step"] else re.sub(r"^[\d./ ]+", "", stated["step"])
            self.lowest, self.highest = self.steps(stated["lowest"]), self.steps(stated["highest"])

    def steps(self, text):
        size, suffix = number(text)
        if self.forward and suffix and suffix != self.forward:
            assert NEGATIVE[suffix] == self.forward, (self.name, text)
            size = -size
        steps = size / self.unit
        assert steps.denominator == 1, (self.name, text)
        return int(steps)

    def value(self, text):
        """A value as rules write it, as an index, a bit's index or steps."""
        if self.kind == "number":
            return self.steps(text)
        if self.kind == "yes or no":
            return {"yes": 1, "true": 1, "no": 0, "false": 0}[text]
        return self.words.index(text)


class World:
    """All facts of a shop, and the formulas of what they may be together."""

    def __init__(self, program, rules, catalog):
        listed = json.loads(subprocess.run([program, "facts", "--json"], capture_output=True, text=True, check=True).stdout)
        self.facts = {stated["name"]: Fact(stated) for stated in listed["facts"]}
        assumptions = yaml.load((rules / "assumptions.yaml").read_text(), Loader=yaml.BaseLoader)["assumptions"]
        self.assumed = {entry["fact"] for entry in assumptions if "value" in entry}
        self.balls = read_balls(catalog, self.facts)
        self.v, self.k = {}, {}
        for name, fact in self.facts.items():
            self.k[name] = z3.Bool("known " + name)
            self.v[name] = z3.BitVec(name, len(fact.words)) if fact.kind == "set" else z3.Int(name)

    def range(self, name):
        fact, v = self.facts[name], self.v[name]
        if fact.kind == "number":
            return z3.And(v >= fact.lowest, v <= fact.highest)
        if fact.kind == "set":
            return z3.BoolVal(True)
        return z3.And(v >= 0, v < len(fact.words))

    def test(self, name, matcher):
        """What a matcher asks of a fact."""
        fact, v, k = self.facts[name], self.v[name], self.k[name]
        if isinstance(matcher, (str, list)):
            values = [fact.value(text) for text in ([matcher] if isinstance(matcher, str) else matcher)]
            return z3.And(k, z3.Or([v == value for value in values]))
        parts = [k]
        for key, wanted in matcher.items():
            listed = [fact.value(text) for text in (wanted if isinstance(wanted, list) else [wanted])] if key != "known" else []
            bits = sum(1 << index for index in set(listed)) if fact.kind == "set" else 0
            if key == "known":
                if wanted in ("false", "no"):
                    parts.remove(k)
                    parts.append(z3.Not(k))
            elif key == "above":
                parts.append(v > listed[0])
            elif key == "at_least":
                parts.append(v >= listed[0])
            elif key == "at_most":
                parts.append(v <= listed[0])
            elif key == "below":
                parts.append(v < listed[0])
            elif key == "not":
                parts.append(z3.And([v != value for value in listed]))
            elif key == "has":
                parts.append(v & bits == bits)
            elif key == "has_any":
                parts.append(v & bits != 0)
            elif key == "has_none":
                parts.append(v & bits == 0)
            else:
                raise ValueError(key)
        return z3.And(parts)

    def condition(self, when):
        parts = []
        for key, matcher in (when or {}).items():
            if key == "any_of":
                parts.append(z3.Or([self.condition(one) for one in matcher]))
            else:
                parts.append(self.test(key, matcher))
        return z3.And(parts)

    def follows(self, name):
        """What a fact that follows from others is, and the facts it follows from; none for a free one."""
        v, k = self.v, self.k

        def given(value, *sources):
            return z3.And(k[name] == z3.And([k[source] for source in sources]), z3.Implies(k[name], v[name] == value)), sources

        def flag(holds, *sources):
            return given(z3.If(holds, 1, 0), *sources)

        def plain(holds, *sources):
            """A flag that is always known."""
            return z3.And(k[name], v[name] == z3.If(holds, 1, 0)), sources

        def fits():
            return z3.And(k["card.works"], v["card.works"] == 1, k["card.grip"], k["settled.grip"], v["card.grip"] == v["settled.grip"])

        def less(one, other):
            return given(v[one] - v[other], one, other)

        fit = ("card.works", "card.grip", "settled.grip")
        # The thumb's answer is assumed where it is missing.
        thumb_in = v["bowler.thumb"] == 0
        links = {
            "bowler.child": lambda: flag(v["bowler.age"] < 15, "bowler.age"),
            "bowler.older": lambda: flag(v["bowler.age"] >= 60, "bowler.age"),
            "bowler.tenth_of_body": lambda: given(v["bowler.body_weight"] / 10, "bowler.body_weight"),
            "bowler.mirrored": lambda: flag(v["bowler.curve"] == 2, "bowler.curve"),
            "card.fits": lambda: plain(fits(), *fit),
            "hand.thumb_swell": lambda: less("hand.thumb_gauge_warm", "hand.thumb_gauge"),
            "refit.ring_lead": lambda: less("card.ring_span", "card.middle_span"),
            "refit.middle_span_gap": lambda: less("fit.middle.span", "card.middle_span"),
            "refit.ring_span_gap": lambda: less("fit.ring.span", "card.ring_span"),
            "refit.thumb_forward_gap": lambda: less("fit.thumb.forward_pitch", "card.thumb_forward"),
            "refit.thumb_lateral_gap": lambda: less("fit.thumb.lateral_pitch", "card.thumb_lateral"),
            "refit.middle_forward_gap": lambda: less("fit.middle.forward_pitch", "card.middle_forward"),
            "refit.ring_forward_gap": lambda: less("fit.ring.forward_pitch", "card.ring_forward"),
            "refit.thumb_room": lambda: less("card.thumb_bore", "hand.thumb_gauge"),
            "refit.thumb_room_warm": lambda: less("card.thumb_bore", "hand.thumb_gauge_warm"),
            "fit.span_gap": lambda: given(
                z3.Abs(v["fit.ring.span"] - v["fit.middle.span"]), "fit.ring.span", "fit.middle.span"
            ),
            "weight.step": lambda: less("weight.pounds", "bowler.ball_now_weight"),
            "weight.over_tenth": lambda: less("weight.pounds", "bowler.tenth_of_body"),
            "weight.over_age": lambda: given(v["weight.pounds"] - 100 * v["bowler.age"], "weight.pounds", "bowler.age"),
            "weight.over_hold": lambda: less("weight.pounds", "bowler.hold_passed"),
            "weight.at_failed": lambda: flag(v["weight.pounds"] >= v["bowler.hold_failed"], "weight.pounds", "bowler.hold_failed"),
            "weight.off_target": lambda: given(
                z3.Abs(v["weight.pounds"] - v["bowler.target_weight"]), "weight.pounds", "bowler.target_weight"
            ),
            "weight.pounds": lambda: (k["weight.pounds"], ()),
            "match.weight_gap": lambda: given(
                z3.Abs(v["ball.weight"] - v["settled.weight"]), "ball.weight", "settled.weight"
            ),
            "match.heavier": lambda: flag(v["ball.weight"] > v["settled.weight"], "ball.weight", "settled.weight"),
            "match.cover_wish": lambda: flag(v["ball.cover"] == v["bowler.cover_wish"], "ball.cover", "bowler.cover_wish"),
            "match.colour": lambda: flag(
                z3.Or([
                    z3.And(v["bowler.colour_wish"] == index, z3.Extract(index, index, v["ball.colours"]) == 1)
                    for index in range(len(self.facts["ball.colours"].words))
                ]),
                "ball.colours", "bowler.colour_wish",
            ),
            "match.same_cover_owned": lambda: flag(
                z3.Or([
                    z3.And(v["ball.cover"] == index, z3.Extract(index, index, v["owned.covers"]) == 1)
                    for index in range(len(self.facts["owned.covers"].words))
                ]),
                "ball.cover", "owned.covers",
            ),
            "match.over_budget": lambda: (
                z3.Implies(k["match.over_budget"], k["bowler.budget"]), ("bowler.budget",)
            ),
            "grip.kind": lambda: (k["grip.kind"], ()),
            "surface.kind": lambda: (k["surface.kind"], ()),
            "layout.kind": lambda: (k["layout.kind"], ()),
            "cause.kind": lambda: (k["cause.kind"], ()),
        }
        for finger in ("middle", "ring"):
            conventional, fingertip = f"hand.conventional_{finger}_span", f"hand.fingertip_{finger}_span"

            def span(conventional=conventional, fingertip=fingertip):
                grip = v["settled.grip"]
                known = z3.And(k["settled.grip"], z3.If(grip == 0, k[conventional], k[fingertip]))
                value = z3.If(grip == 0, v[conventional], v[fingertip])
                return (
                    z3.And(k[name] == known, z3.Implies(known, v[name] == value)),
                    (conventional, fingertip, "settled.grip"),
                )

            links[f"hand.{finger}_span"] = span
        if name == "fit.has_sleeve":
            card = z3.And(fits(), k["card.sleeve"], v["card.sleeve"] == 1)
            wanted = z3.If(k["settled.sleeve"], v["settled.sleeve"] == 1, card)
            return plain(z3.And(thumb_in, wanted), "bowler.thumb", "settled.sleeve", "card.sleeve", *fit)
        if name == "fit.has_slug":
            # Known only with the grip.
            holds = z3.And(
                thumb_in, z3.Or(v["settled.grip"] == 1, v["fit.has_sleeve"] == 1, z3.And(fits(), k["card.slug"]))
            )
            link = z3.And(k[name] == k["settled.grip"], z3.Implies(k[name], v[name] == z3.If(holds, 1, 0)))
            return link, ("bowler.thumb", "fit.has_sleeve", "card.slug", *fit)
        if name == "fit.has_oval":
            card = z3.And(fits(), k["card.oval_wide"], k["card.oval_narrow"])
            round_one = z3.And(fits(), k["card.thumb_bore"])
            gauged = z3.And(k["hand.oval_wide"], k["hand.oval_narrow"], z3.Not(round_one))
            sources = ("card.oval_wide", "card.oval_narrow", "card.thumb_bore", "hand.oval_wide", "hand.oval_narrow")
            return plain(z3.And(thumb_in, z3.Or(card, gauged)), "bowler.thumb", *sources, *fit)
        if name == "fit.thumb.widest":
            oval = v["fit.has_oval"] == 1
            known = z3.If(oval, k["fit.thumb.oval_wide"], k["fit.thumb.bore"])
            value = z3.If(oval, v["fit.thumb.oval_wide"], v["fit.thumb.bore"])
            link = z3.And(k[name] == known, z3.Implies(known, v[name] == value))
            return link, ("fit.has_oval", "fit.thumb.oval_wide", "fit.thumb.bore")
        return links[name]() if name in links else None

    def possible(self, subject, names):
        """What the facts of these names, and all behind them, may be when rules of this subject are judged."""
        parts, seen, queue = [], set(), list(names)
        while queue:
            name = queue.pop()
            if name in seen:
                continue
            seen.add(name)
            link = self.follows(name)
            if link:
                parts.append(link[0])
                queue.extend(link[1])
            parts.append(self.range(name) if not link or self.facts[name].subject else z3.BoolVal(True))
            if name in self.assumed:
                parts.append(self.k[name])
            if self.facts[name].origin == "settled" and not may_be_settled(subject, name):
                parts.append(z3.Not(self.k[name]))
            if (subject, name) in ALWAYS_SETTLED:
                parts.append(self.k[name])
        parts.extend(self.profile(seen))
        parts.extend(self.stock(seen))
        return parts

    def profile(self, seen):
        """Answers that can't be given together."""
        v, k = self.v, self.k
        clashes = [
            ("bowler.hold_passed", "bowler.hold_failed", v["bowler.hold_passed"] < v["bowler.hold_failed"]),
            ("bowler.ball_now", "bowler.ball_now_weight", v["bowler.ball_now"] != 0),
            ("hand.oval_wide", "hand.oval_narrow", v["hand.oval_narrow"] <= v["hand.oval_wide"]),
            ("card.oval_wide", "card.oval_narrow", v["card.oval_narrow"] <= v["card.oval_wide"]),
            # Whoever was measured isn't guessed at.
            ("bowler.rev_rate", "bowler.rev_level", z3.BoolVal(False)),
            # A cover that is owned is on a ball, and no ball has two.
            ("owned.covers", "owned.count", self.how_many("owned.covers") <= v["owned.count"]),
        ]
        # No hole is measured for a thumb that stays out.
        measured = [name for name in self.facts if name.startswith(("hand.thumb_", "hand.oval_")) and name != "hand.thumb_swell"]
        clashes += [("bowler.thumb", name, v["bowler.thumb"] != 1) for name in measured]
        for one, other, holds in clashes:
            if one in seen and other in seen:
                yield z3.Implies(z3.And(k[one], k[other]), holds)

    def how_many(self, name):
        """The size of a set."""
        bits = range(len(self.facts[name].words))
        return z3.Sum([z3.If(z3.Extract(bit, bit, self.v[name]) == 1, 1, 0) for bit in bits])

    def stock(self, seen):
        """The candidate is one of the balls on the shelf."""
        columns = sorted(name for name in seen if name.startswith("ball."))
        if not columns:
            return
        yield z3.And([self.k[name] for name in columns])
        rows = sorted({tuple(ball[name] for name in columns) for ball in self.balls})
        yield z3.Or([z3.And([self.v[name] == value for name, value in zip(columns, row)]) for row in rows])


def read_balls(catalog, facts):
    def rows(name):
        with open(catalog / name, newline="") as file:
            return list(csv.DictReader(line for line in file if not line.startswith("#")))

    models = {row["id"]: row for row in rows("models.csv")}
    cores = {(row["model"], row["weight"]): row for row in rows("cores.csv")}
    balls = []
    for row in rows("shelf.csv"):
        model, core = models[row["model"]], cores[(row["model"], row["weight"])]
        ball = {"ball.weight": facts["ball.weight"].steps(row["weight"]), "ball.price": facts["ball.price"].steps(model["price"])}
        for column in ("cover", "core", "finish", "tier"):
            ball[f"ball.{column}"] = facts[f"ball.{column}"].words.index(model[column])
        for column in ("rg", "differential", "intermediate"):
            ball[f"ball.{column}"] = facts[f"ball.{column}"].steps(core[column])
        words = facts["ball.colours"].words
        ball["ball.colours"] = sum(1 << words.index(word) for word in model["colours"].split())
        balls.append(ball)
    return balls


# What is settled when: the fitter may settle weight, grip and sleeve before all; the rest comes in this order.
STAGES = ["weight", "grip", "ball", "surface", "layout"]
SETTLED_BY = {"settled.cover": "ball", "settled.core": "ball", "settled.layout": "layout", "refit.cause": "cause"}
ALWAYS_SETTLED = {("ball", "settled.grip")} | {
    (subject, fact)
    for subject in ("surface", "layout")
    for fact in ("settled.weight", "settled.grip", "settled.cover", "settled.core")
}


def place(subject):
    """Where a subject stands in a consultation: bench, stages, the numbers of the drill, causes of a bad fit, all else."""
    if subject.startswith("bench."):
        return 0
    if subject in STAGES:
        return 1 + STAGES.index(subject)
    return {"cause": 90}.get(subject, 50 if subject in MEASURES else 100)


MEASURES = set()


def may_be_settled(subject, fact):
    if fact in ("used.plain_over", "used.weight_over"):
        return subject == "offer"
    if fact in SETTLED_BY:
        return place(SETTLED_BY[fact]) < place(subject)
    if fact.startswith("bench."):
        return place(subject) > 0
    if fact.startswith("fit."):
        if place(subject) == 50:
            return DRILL_ORDER.index(fact) < DRILL_ORDER.index("fit." + subject)
        return place(subject) > 50
    return True


# Filled in the order in which `facts` lists the numbers of the drill: the order of work.
DRILL_ORDER = []
