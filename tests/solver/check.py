"""Decides with a theorem prover which rules never hold and which are contained in a stronger one, and compares with `rules check`.

Rule files are read here by other code than the program's. Both must find the same: for the built-in rules, and for 200 sets of
random rules laid over them, many of them nearly clashing. The seed is fixed.
"""

import json
import random
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import yaml
import z3

import facts as about
from sets import random_set

SETS = 200
SEED = 20_261_125


def read_rules(paths):
    """Every rule of these files: id, subject, conditions and what it does."""
    rules = []
    for path in paths:
        document = yaml.load(path.read_text(), Loader=yaml.BaseLoader)
        for rule in document.get("rules", []):
            rules.append({**rule, "subject": rule.get("subject", document.get("subject"))})
    return rules


def is_stronger(rule, other):
    """Whether `other` makes `rule` pointless wherever both hold."""
    if "disputes" in rule or "disputes" in other or rule["subject"] != other["subject"]:
        return False
    if "rule_out" in other:
        return "points" in rule or "caution" in rule or "rule_out" in rule
    # Both cautions are told; only one that asks for nothing of its own adds nothing.
    return other.get("caution") == "serious" and rule.get("caution") == "mild" and "then" not in rule


class Prover:
    def __init__(self, world):
        self.world = world
        self.asked = 0

    def can(self, rules, subject, formula):
        names = {name for rule in rules for name in named(rule.get("when"))}
        solver = z3.Solver()
        solver.add(self.world.possible(subject, sorted(names)))
        solver.add(formula)
        self.asked += 1
        answer = solver.check()
        assert answer != z3.unknown, [rule["id"] for rule in rules]
        return answer == z3.sat

    def never(self, rule):
        return not self.can([rule], rule["subject"], self.world.condition(rule.get("when")))

    def contained(self, rule, other):
        inside, outside = self.world.condition(rule.get("when")), self.world.condition(other.get("when"))
        if self.can([rule, other], rule["subject"], z3.And(inside, z3.Not(outside))):
            return False
        # Two that rule out the same are doubled, and not the one contained in the other.
        return "rule_out" not in rule or self.can([rule, other], rule["subject"], z3.And(outside, z3.Not(inside)))


def named(when):
    for key, matcher in (when or {}).items():
        if key == "any_of":
            for one in matcher:
                yield from named(one)
        else:
            yield key


def told(program, paths):
    """What `rules check` finds: rules that never hold, and pairs of which the first is contained in the second."""
    run = subprocess.run([program, "rules", "check", "--json", *map(str, paths)], capture_output=True, text=True)
    if run.returncode != 0:
        sys.exit(f"{' '.join(map(str, paths))} was refused:\n{run.stderr}")
    document = json.loads(run.stdout)
    of_kind = lambda *kinds: [
        tuple(rule["id"] for rule in finding["rules"]) for finding in document["findings"] if finding["kind"] in kinds
    ]
    open_ones = [
        kind for kind in document["kinds"] if kind["not_settled"] and kind["kind"] in ("never true", "contained", "contradictory")
    ]
    return {ids[0] for ids in of_kind("never true")}, set(of_kind("contained", "contradictory")), open_ones


def main():
    program, build = sys.argv[1], Path(sys.argv[2])
    count = int(sys.argv[3]) if len(sys.argv) > 3 else SETS
    world = about.World(program, Path("rules"), Path("catalog-demo"))
    about.DRILL_ORDER.extend(name for name, fact in world.facts.items() if name.startswith("fit.") and fact.origin == "settled")
    about.MEASURES.update(name.removeprefix("fit.") for name in about.DRILL_ORDER)
    prover = Prover(world)
    wrong = []

    # The tables of limits are no rules of this kind.
    built_in = [rule for rule in read_rules(sorted(Path("rules").glob("*.yaml"))) if "because" in rule]
    never, contained, still_open = told(program, [])
    proved_never = {rule["id"] for rule in built_in if prover.never(rule)}
    pairs = [
        (rule, other) for rule in built_in for other in built_in if rule is not other and is_stronger(rule, other)
    ]
    proved = {(a["id"], b["id"]) for a, b in pairs if a["id"] not in proved_never and prover.contained(a, b)}
    compare("the built-in rules", (never, contained), (proved_never, proved), still_open, set(), wrong)
    print(f"built-in: {len(built_in)} rules, {len(pairs)} pairs, never {len(never)}, contained {len(contained)}")

    chance = random.Random(SEED)
    sets = []
    for index in range(count):
        path = build / f"random-{index:03}.yaml"
        path.write_text(random_set(world, chance, index))
        sets.append(path)
    with ThreadPoolExecutor(2) as pool:
        answers = pool.map(lambda path: told(program, [path]), sets)
        totals, unsettled = [0, 0, 0], 0
        for path, (never, contained, still_open) in zip(sets, answers):
            new = read_rules([path])
            ids = {rule["id"] for rule in new}
            proved_never = {rule["id"] for rule in new if prover.never(rule)}
            living = [rule for rule in new if rule["id"] not in proved_never]
            near = [(a, b) for a in living for b in living if a is not b and is_stronger(a, b)]
            # What is found with a built-in rule is proved too; the other way round, a few are tried.
            mixed = [(a, b) for a in built_in for b in living if is_stronger(a, b)]
            mixed += [(a, b) for a in living for b in built_in if is_stronger(a, b)]
            found = [
                pair for pair in mixed if (pair[0]["id"], pair[1]["id"]) in contained
            ]
            tried = chance.sample(mixed, min(len(mixed), 6))
            asked = near + found + [pair for pair in tried if pair not in found]
            proved = {(a["id"], b["id"]) for a, b in asked if prover.contained(a, b)}
            # Points along a curve may be above nothing only where they are ruled out: contradictory, yet not contained.
            curves = {
                (a["id"], b["id"]) for a, b in asked if isinstance(a.get("points"), dict) and (a["id"], b["id"]) not in proved
            }
            tried_ids = {(a["id"], b["id"]) for a, b in asked}
            ours = {pair for pair in contained if pair in tried_ids or not set(pair) & ids}
            # What isn't settled claims nothing; of random rules it is counted, of the built-in ones there may be none.
            unsettled += sum(kind["not_settled"] for kind in still_open)
            compare(path, (never & ids, ours), (proved_never, proved), [], curves, wrong)
            totals = [a + b for a, b in zip(totals, (len(new), len(proved_never), len(proved)))]
    print(f"random: {count} sets, {totals[0]} rules, never {totals[1]}, contained {totals[2]}; {unsettled} not settled; {prover.asked} proofs")
    if wrong:
        sys.exit("\n".join(wrong))


def compare(what, ours, proved, still_open, excused, wrong):
    for kind, told_so, proved_so in zip(("never true", "contained"), ours, proved):
        for only in sorted(map(str, told_so - proved_so - excused)):
            wrong.append(f"{what}: {only} is said to be {kind}, which is disproved")
        for only in sorted(map(str, proved_so - told_so)):
            wrong.append(f"{what}: {only} is proved to be {kind}, which isn't said")
    if still_open:
        wrong.append(f"{what}: not settled: {still_open}")


if __name__ == "__main__":
    main()
