"""Random rule sets, many of whose rules nearly clash or nearly contain one another."""

import re

# Facts that random rules ask of, by subject, beside those of everybody.
EVERYBODY = [
    "bowler.age", "bowler.child", "bowler.older", "bowler.intent", "bowler.experience", "bowler.body_weight",
    "bowler.tenth_of_body", "bowler.ball_now", "bowler.ball_now_weight", "bowler.hold_passed", "bowler.hold_failed",
    "bowler.aches", "bowler.lanes", "bowler.thumb", "bowler.curve", "bowler.mirrored", "bowler.rev_rate", "bowler.rev_level",
    "bowler.cover_wish", "bowler.colour_wish", "owned.covers", "owned.count", "settled.weight", "settled.grip",
    "card.works", "card.grip", "card.fits", "card.thumb_bore", "hand.thumb_gauge", "hand.thumb_gauge_warm",
    "hand.thumb_swell", "hand.oval_wide", "hand.oval_narrow", "fit.has_oval", "fit.has_sleeve",
]
OWN = {
    "weight": [
        "weight.pounds", "weight.step", "weight.over_tenth", "weight.over_age", "weight.over_hold", "weight.at_failed",
        "weight.off_target", "bowler.target_weight", "settled.cover",
    ],
    "grip": ["grip.kind", "settled.weight", "settled.layout"],
    "ball": [
        "ball.cover", "ball.core", "ball.tier", "ball.finish", "ball.weight", "ball.rg", "ball.differential", "ball.price",
        "ball.colours", "match.weight_gap", "match.heavier", "match.colour", "match.cover_wish", "match.same_cover_owned",
        "settled.core",
    ],
    "surface": ["surface.kind", "settled.cover", "settled.core", "settled.layout"],
    "layout": ["layout.kind", "settled.core", "bowler.pap_over", "bowler.pap_up"],
    "person": ["fit.has_slug", "fit.thumb.widest", "fit.thumb.bore", "hand.middle_span", "fit.span_gap", "refit.thumb_room"],
    "thumb.bore": ["fit.thumb.clearance", "fit.thumb.slug", "fit.has_slug", "refit.thumb_room_warm"],
}
CHOICES = ("weight", "grip", "ball", "surface", "layout")
ASKS = {"number": ("above", "at_least", "at_most", "below")}


def written(fact, steps):
    """A number of steps as rule files write it."""
    size = abs(steps) * fact.unit
    sign = ""
    if fact.forward:
        other = {"F": "R", "R": "L", "up": "down"}[fact.forward]
        sign = f" {fact.forward if steps >= 0 else other}"
    elif steps < 0:
        sign = " less"
    if fact.unit.denominator == 64:
        whole, rest = divmod(size, 1)
        text = " ".join(str(part) for part in (whole, rest) if part) or "0"
        return text + (sign if fact.forward and steps else "" if fact.forward else " in" + sign)
    unit = fact.stated_suffix
    text = f"{float(size):.3f}".rstrip("0").rstrip(".")
    if fact.stated_suffix == "$":
        return f"${text}" if float(size) == int(size) else f"${float(size):.2f}"
    return f"{text} {unit}".strip() + sign


def matcher(world, chance, name):
    """A test of a fact that some value meets."""
    fact = world.facts[name]
    if chance.random() < 0.12:
        return {"known": chance.choice(["true", "false"])}
    if fact.kind == "number":
        span = fact.highest - fact.lowest
        # Differences reach far; what people differ by is near nothing.
        low, high = fact.lowest, fact.highest
        if fact.origin in ("worked out", "worked out for each candidate") and low < 0:
            low, high = max(low, -fact.highest), high
        at = chance.randint(low + (high - low) // 10, high - (high - low) // 10) if span > 10 else chance.randint(low, high)
        at = max(fact.lowest + 1, min(fact.highest - 1, at)) if span > 2 else at
        if chance.random() < 0.2 or span <= 2:
            return written(fact, at)
        return {chance.choice(ASKS["number"]): written(fact, at)}
    if fact.kind == "set":
        words = chance.sample(fact.words, min(len(fact.words) - 1, chance.randint(1, 3)))
        return {chance.choice(["has", "has_any", "has_none"]): words}
    if fact.kind == "yes or no":
        return chance.choice(["yes", "no"])
    words = chance.sample(fact.words, chance.randint(1, max(1, len(fact.words) - 1)))
    return words if chance.random() < 0.7 else {"not": words}


def condition(world, chance, subject, most=3):
    names = chance.sample(OWN[subject] * 2 + EVERYBODY, chance.randint(1, most))
    return {name: matcher(world, chance, name) for name in dict.fromkeys(names)}


def narrowed(world, chance, subject, when):
    """The same with one more test, or one of its numbers moved."""
    when = dict(when)
    if chance.random() < 0.5:
        when.update(condition(world, chance, subject, 1))
        return when
    name = chance.choice([key for key in when if key != "any_of"] or ["bowler.age"])
    when[name] = matcher(world, chance, name)
    return when


def clashing(world, chance, subject):
    """Tests of facts that hang together: they may just meet or just miss."""
    pairs = [
        ("bowler.child", "bowler.age"), ("bowler.older", "bowler.age"), ("bowler.child", "bowler.older"),
        ("bowler.tenth_of_body", "bowler.body_weight"), ("bowler.mirrored", "bowler.curve"),
        ("bowler.hold_passed", "bowler.hold_failed"), ("bowler.ball_now", "bowler.ball_now_weight"),
        ("hand.thumb_swell", "hand.thumb_gauge"), ("hand.thumb_swell", "hand.thumb_gauge_warm"), ("card.fits", "card.works"),
        ("owned.count", "owned.covers"), ("bowler.rev_rate", "bowler.rev_level"), ("bowler.thumb", "hand.thumb_gauge"),
        ("card.fits", "card.grip"), ("fit.has_oval", "bowler.thumb"), ("fit.has_sleeve", "bowler.thumb"),
    ]
    own = {
        "weight": [
            ("weight.step", "bowler.ball_now_weight"), ("weight.over_hold", "weight.pounds"), ("weight.over_age", "bowler.child"),
            ("weight.at_failed", "bowler.hold_failed"), ("weight.over_tenth", "bowler.body_weight"),
        ],
        "ball": [
            ("ball.cover", "ball.tier"), ("ball.core", "ball.cover"), ("ball.weight", "match.weight_gap"),
            ("ball.rg", "ball.weight"), ("ball.differential", "ball.cover"), ("match.cover_wish", "bowler.cover_wish"),
            ("match.colour", "bowler.colour_wish"), ("match.heavier", "settled.weight"), ("ball.finish", "ball.cover"),
        ],
    }.get(subject, [])
    names = chance.choice(pairs + own * 2)
    return {name: matcher(world, chance, name) for name in names}


def random_set(world, chance, index):
    """An overlay file with several rules of one or two subjects."""
    rules = []
    for subject in chance.sample(sorted(OWN), 2):
        base = condition(world, chance, subject)
        for _ in range(chance.randint(3, 5)):
            kind = chance.random()
            if kind < 0.35:
                when = clashing(world, chance, subject)
            elif kind < 0.5:
                when = dict(base)
            else:
                when = narrowed(world, chance, subject, base)
            if chance.random() < 0.25:
                when["any_of"] = [condition(world, chance, subject, 1) for _ in range(2)]
            rules.append((subject, when, effect(chance, subject)))
        # The base rules out or warns seriously, so that what is narrower lies within.
        rules.append((subject, base, "rule_out: true" if subject in CHOICES else "caution: serious"))
    lines = ["rules:"]
    for place, (subject, when, does) in enumerate(rules):
        lines += [
            f"  - id: random-{index}-{place}",
            f"    subject: {subject}",
            f"    when: {flow(when)}",
            f"    {does}",
            "    because: It is made up.",
            "    source: own choice",
        ]
    return "\n".join(lines) + "\n"


def effect(chance, subject):
    if subject in CHOICES:
        return chance.choice([f"points: {chance.choice([-9, -4, 3, 8])}", "rule_out: true", "caution: mild", "caution: serious"])
    return chance.choice(["caution: mild", "caution: mild", "caution: serious"])


def flow(value):
    """YAML on one line."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key}: {flow(part)}" for key, part in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(flow(part) for part in value) + "]"
    return value if re.fullmatch(r"[a-z_]+", value) else f'"{value}"'
