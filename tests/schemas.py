#!/usr/bin/env python3
"""The JSON Schemas that ship with the starter, asked of an independent validator (python3-jsonschema).

usage: schemas.py PROGRAM REPOSITORY WORK_FOLDER

They must be schemas of draft 2020-12, accept the front matter of every plan and drill, every club file and every file of
figures of the demo club, the examples, the good cases and the shipped catalogue, and refuse each of the wrong files below, which the program refuses, too.
What keys they have is compared with the readers' own by tests/club/schemas_test.cpp.

YAML is read by the core schema of YAML 1.2.2 (10.3), as text editors do: `off` and `yes` are text, not booleans.
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys

import jsonschema
import yaml

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
SCHEMAS = repository / "examples" / "begin" / "schemas"
failures = []

# Slips that Chalkleaf takes for what was meant, and that are no such YAML: an editor may mark them.
FORGIVEN = {
    "good-long-dashes-for-hyphens": "no front matter to other readers",
    "good-indented-hyphens": "no front matter to other readers",
    "good-curly-quotes-round-values": "the quotation marks are part of the value to other readers",
}


class Core(yaml.SafeLoader):
    """Only what the core schema of YAML 1.2.2 (10.3.2) knows."""


Core.yaml_implicit_resolvers = {}
for tag, pattern, first in [
        ("null", r"^(?:~|null|Null|NULL|)$", ["~", "n", "N", ""]),
        ("bool", r"^(?:true|True|TRUE|false|False|FALSE)$", list("tTfF")),
        ("int", r"^[-+]?[0-9]+$", list("-+0123456789")),
        ("float", r"^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$", list("-+.0123456789"))]:
    Core.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(pattern), first)
# PyYAML would take 02024 for octal; 1.2.2 does not.
Core.add_constructor("tag:yaml.org,2002:int", lambda loader, node: int(node.value, 10))


def validator(name):
    schema = json.loads((SCHEMAS / f"{name}.schema.json").read_text())
    if schema["$schema"] != "https://json-schema.org/draft/2020-12/schema":
        failures.append(f"{name}: not of draft 2020-12")
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


VALIDATORS = {name: validator(name) for name in ("plan", "drill", "club", "figure", "look")}


def mistakes(kind, text):
    """What the schema has against a YAML text; a text that is no YAML is a mistake of its own."""
    try:
        value = yaml.load(text, Core)
    except yaml.YAMLError as error:
        return [f"not YAML: {error}"]
    found = VALIDATORS[kind].iter_errors({} if value is None else value)
    return [f"{'/'.join(map(str, e.absolute_path))}: {e.message}" for e in found]


def front_matter(path):
    text = path.read_bytes().decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    match = re.match(r"---[ \t]*\n(.*?\n|)---[ \t]*\n", text, re.S)
    return match.group(1) if match else None


def kind_of(path):
    if path.name == "club.yaml":
        return "club"
    if path.suffix == ".yaml" and path.parent.name == "figures":
        return "figure"
    if path.suffix == ".yaml" and path.parent.name in ("looks", "themes"):
        return "look"
    if path.suffix != ".md" or path.stem.lower() == "readme" or "parts" in path.parts or "out" in path.parts:
        return None
    return "drill" if "drills" in path.parts or path.parent.name == "shelf" else "plan"


def good_files():
    for top in (repository / "plans", repository / "examples", repository / "themes"):
        yield from (p for p in sorted(top.rglob("*")) if "mistakes" not in p.relative_to(top).parts)
    for case in sorted((repository / "tests" / "cases").glob("good-*")):
        yield from sorted(case.rglob("*"))


checked = dict.fromkeys(VALIDATORS, 0)
for path in good_files():
    kind = kind_of(path) if path.is_file() else None
    if kind is None:
        continue
    case = next((part for part in path.parts if part in FORGIVEN), None)
    text = path.read_text() if path.suffix == ".yaml" else front_matter(path)
    if text is None:
        if kind == "plan" and case is None and "cases" not in path.parts:
            failures.append(f"{path}: no front matter found")
        continue
    said = mistakes(kind, text)
    checked[kind] += 1
    if said and case is None:
        failures += [f"{path.relative_to(repository)}: {one}" for one in said]
    if not said and case is not None and kind == "plan":
        failures.append(f"{case}: is named as one the schema does not accept, and it does")
if min(checked["plan"], checked["drill"]) < 20 or checked["club"] < 3 or checked["figure"] < 10 or checked["look"] < 6:
    failures.append(f"few files were found: {checked}")

WRONG = {
    "plan": [
        "title: T\n",
        "title: T\nplace: park\n",
        "title: T\nplace: gym\nslott: 40 min\n",
        "title: T\nplace: gym\nslot: 40\n",
        "title: T\nplace: gym\ngymnasts: Ann and Ben\n",
        "title: T\nplace: gym\ngymnasts: [Ann, Ben]\n",
        "title: T\nplace: gym\ngymnasts: 61\n",
        "title: T\nplace: gym\nadults: 0\n",
        "title: T\nplace: gym\nheat: rather\n",
        "title: T\nplace: gym\ndate: 2 December 2026\n",
        "title: T\nplace: gym\nstart: in the evening\n",
        "title: T\nplace: gym\ntimings: {rest: 5}\n",
        "title: T\nplace: gym\ntimings: {reps: 3 s}\n",
        "title: T\nplace: gym\ntimings: {parts: {P: 5}}\n",
        "title: [T]\nplace: gym\n",
        "title: T\nplace: gym\nfit: 2\n",
        "title: T\nplace: gym\nfit: {cards: 1 page}\n",
    ],
    "drill": [
        "title: D\nkynd: shape\n",
        "title: D\nkind: tumbling\n",
        "title: D\nlevel: 11\n",
        "title: D\nlevel: high\n",
        "title: D\nloads: {wrist: 1}\n",
        "title: D\nloads: {wrists: 4}\n",
        "title: D\nloads: wrists\n",
        "title: D\nspotter: sometimes\n",
        "title: D\nspotter: yes\nhome: yes\n",
        "title: D\ncoach: yes\nhome: yes\n",
        "title: D\neach: {jumps: 1}\n",
        "title: D\neach: {landings: 0}\n",
        "title: D\neach: {inverted: 2}\n",
        "title: D\neffort: 11\n",
        "title: D\nlongest: 20\n",
        "title: D\nchangeover: 20\n",
        "title: D\nshelf: maybe\n",
        "title: D\ncurve: round\n",
        "title: D\nsides: left\n",
        "title: D\npace: 3\n",
        "title: D\nmets: 3.8\n",
        "title: D\nneeds: {towel: 1}\n",
    ],
    "club": [
        "paper: a4\n",
        "name: A\nshelf: some\n",
        "name: A\npaper: a3\n",
        "name: A\npaper: {cards: a5}\n",
        "name: A\npaper: {card: a5 sideways}\n",
        "name: A\nfiling-margin: 20 mm\n",
        "name: A\nreturn-slip: [Friday]\n",
        "name: A\ngroups: [Wrens]\n",
        "name: A\ngroups: {Wrens: {children: [Ann]}}\n",
        "name: A\ngroups: {Wrens: {ages: young}}\n",
        "name: A\ngroups: {Wrens: {size: 70}}\n",
        "name: A\nhall: {beam: {counts: 3}}\n",
        "name: A\nhall: {beam: 3}\n",
        "name: A\nkit: {hoops: a dozen}\n",
        "name: A\nstaff: {Coach: {born: 1990}}\n",
        "name: A\nwords: {dish: }\n",
        "name: A\nchecks: {under-slot: never}\n",
        "name: A\nchecks: {underslot: off}\n",
        "name: A\nlimits: {unused-share: 101}\n",
        "name: A\nlimits: {water-after: 60}\n",
        "name: A\nlanguage: englishlanguage\n",
        "name: A\ntimings: {parts: {P: 5 min}}\n",
    ],
    "figure": [
        "family: Shapes\n",
        "figures: [a]\n",
        "figures: {a: {touches: feet}}\nfigure: {}\n",
        "figures: {a: standing}\n",
        "figures: {a: {toutches: feet}}\n",
        "figures: {a: {touches: nose}}\n",
        "figures: {a: {touches: near back}}\n",
        "figures: {a: {touches: {hands: moon}}}\n",
        "figures: {a: {touches: feet, joints: {elbows: 20}}}\n",
        "figures: {a: {touches: feet, joints: {near spine: 20}}}\n",
        "figures: {a: {touches: feet, joints: {elbow: bent}}}\n",
        "figures: {a: {touches: feet, joints: {elbow: 400}}}\n",
        "figures: {a: {touches: feet, joints: [elbow]}}\n",
        "figures: {a: {touches: feet, view: left}}\n",
        "figures: {a: {touches: feet, lean: forwards}}\n",
        "figures: {a: {touches: nothing, height: 5}}\n",
        "figures: {a: {touches: feet, hands on: nose}}\n",
        "figures: {a: {touches: feet, hands on: {both: hips}}}\n",
        "figures: {a: {touches: feet, holds: sword}}\n",
        "figures: {a: {touches: feet, adjust: [waist]}}\n",
        "figures: {a: {touches: feet, range: wide}}\n",
        "figures: {a: {touches: feet, still: maybe}}\n",
        "figures: {a: {touches: feet, alt: ' '}}\n",
        "figures: {a: {touches: feet, frames: []}}\n",
        "figures: {a: {frames: [standing, squat, standing, squat, standing]}}\n",
        "figures: {a: {frames: [standing, squat], show: film}}\n",
        "figures: {a: {frames: [standing, squat], tempo: quick}}\n",
        "figures: {a: {frames: [standing, squat], moves: nose}}\n",
        "figures: {a: {touches: feet, circles: nose}}\n",
        "figures: {a: {touches: feet, turns: hips}}\n",
    ],
    "look": [
        "name: own\nlike: classic\ncolour: {ink: '#000000'}\n",
        "name: own\n",
        "name: own\nlike: classic\ncolours: {ink: black}\n",
        "name: own\nlike: classic\ncolours: {inks: '#000000'}\n",
        "name: own\nlike: classic\nfigures: {hair: '#000000'}\n",
        "name: own\nlike: classic\ncard: {gap: 3}\n",
        "name: own\nlike: classic\ncard: {radius: 3 mm}\n",
        "name: own\nlike: classic\ncard: {part-band: grey}\n",
        "name: own\nlike: classic\nhome: {panel: hair tint ink}\n",
        "name: own\nlike: classic\nhome: {margin: {a3: 12 mm}}\n",
        "name: own\nlike: classic\nhome: {scale: {a5: small}}\n",
        "name: own\nlike: classic\nhome: {text: {title: 30 bold}}\n",
        "name: own\nlike: classic\nhome: {text: {title: 30/34 heavy}}\n",
        "name: own\nlike: classic\nhome: {text: {heading: 30/34}}\n",
    ],
}
BODY = "\n## Warm-up\n\n- Run: 2 min\n\n## P\n\n- Hop: 2 min\n\n## Cool-down\n\n- Walk: 2 min\n"


def program_refuses(kind, text):
    """True when the program finds an error, and not for another reason than that file."""
    shutil.rmtree(work, ignore_errors=True)
    for folder in ("drills", "figures", "looks"):
        (work / folder).mkdir(parents=True)
    (work / "club.yaml").write_text("name: A\nchecks: {under-slot: off}\n" if kind != "club" else text)
    name = {"plan": "plan.md", "drill": "drills/d.md", "club": "club.yaml", "figure": "figures/own.yaml",
            "look": "looks/own.yaml"}[kind]
    if kind in ("figure", "look"):
        (work / name).write_text(text)
    elif kind != "club":
        (work / name).write_text(f"---\n{text}---\n{BODY if kind == 'plan' else ''}")
    if kind == "look":
        (work / "plan.md").write_text(f"---\ntitle: T\nplace: gym\nlook: own\n---\n{BODY}")
    asked = {"figure": "club.yaml", "look": "plan.md"}.get(kind, name)  # read with their club, or where they are used
    ran = subprocess.run([program, "check", "--messages", "short", asked], cwd=work, capture_output=True, text=True)
    # What is wrong in a plan's front matter costs no sheet: the coach is told, and that is enough.
    told = kind == "plan" and re.search(r"\[(bad-value|[a-z]+-key|read-as)\]", ran.stderr)
    return (ran.returncode == 1 or bool(told)) and f"{name}:" in ran.stderr


SOUND = {"plan": "title: T\nplace: gym\n", "drill": "title: D\n", "club": "name: A\n",
         "figure": "figures: {a: {touches: feet}}\n", "look": "name: own\nlike: classic\n"}
for kind, texts in WRONG.items():
    if mistakes(kind, SOUND[kind]) or program_refuses(kind, SOUND[kind]):
        failures.append(f"{kind}: what all wrong files begin with is wrong already")
    for text in texts:
        if not mistakes(kind, text):
            failures.append(f"{kind}: accepted, and should not be:\n{text}")
        if not program_refuses(kind, text):
            failures.append(f"{kind}: the program does not refuse:\n{text}")
shutil.rmtree(work, ignore_errors=True)

# What the program itself prints as JSON.
for command, plans in (("times", ["sessions/kestrels-bar-shapes.md"]), ("loads", [])):
    said = subprocess.run([program, command, "--json", *plans], cwd=repository / "plans", capture_output=True, text=True)
    printed = json.loads(said.stdout)
    failures += [f"{command} --json: {each.message[:200]}" for each in validator(command).iter_errors(printed)]
    if command == "loads" and not (printed["plans"] and printed["weeks"]):
        failures.append("loads --json: no plans or no weeks of the demo club")

print("\n".join(failures) or f"{checked} accepted, {sum(map(len, WRONG.values()))} wrong ones refused")
sys.exit(1 if failures else 0)
