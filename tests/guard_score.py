#!/usr/bin/env python3
"""How much danger the program sees in plans whose danger is known, and how often it cries wolf.

    guard_score.py PROGRAM FOLDER [-v] [--least 95] [--most 1]

FOLDER holds plans and coded.json: a list of {file, line, reason} for bad plans (line 0: something
is missing) and {file, good: true} for sound ones. A bad plan counts as noticed when a warning or
an error whose check fits the reason (FITS below) stands on that line; a label of such a finding
counts as well, since one message names all its places. For what is missing it may stand anywhere.
A sound plan counts as accused when any check of CARE speaks of it. With --least and --most the
program exits 1 when the shares, in percent, are worse.
"""
import argparse
import json
import pathlib
import subprocess
import sys

# Which checks are about which reason.
FITS = {
    "inverted-at-home": ["danger-upside-down", "danger-neck", "spotter-at-home"],
    "backbend-at-home": ["danger-back-bend", "spotter-at-home"],
    "neck": ["danger-neck", "danger-upside-down"],
    "weights": ["danger-weight"],
    "forced-stretch": ["danger-force"],
    "ballistic": ["danger-bounce"],
    "furniture-height": ["danger-height"],
    "door-or-stairs": ["danger-door", "danger-height"],
    "tied": ["danger-tied"],
    "choking": ["danger-choking", "danger-tied"],
    "trampoline": ["danger-trampoline"],
    "slippery": ["danger-slip"],
    "breath-holding": ["danger-breath"],
    "pain": ["danger-pain"],
    "blindfold": ["danger-blindfold"],
    "exhaustion": ["danger-exhaustion", "danger-hold"],
    "punishment": ["danger-exhaustion"],
    "exhausted-skill": ["danger-tired-skill", "skill-when-tired"],
    "hold-too-long": ["danger-hold", "hold-too-long", "danger-exhaustion"],
    "power-before-warm-up": ["danger-cold", "power-before-raise"],
    "stretch-before-power": ["danger-long-stretch", "stretch-too-long"],
    "stretch-before-raise": ["danger-long-stretch", "stretch-before-raise", "danger-cold"],
    "unspotted": ["danger-unspotted", "danger-alone"],
    "no-mats": ["danger-no-mats"],
    "ratio-or-adult": ["danger-alone", "no-adult-note", "too-few-adults"],
    "no-space": ["danger-space", "no-space-note"],
    "level-above-group": ["danger-level", "level-above-group"],
    "heat": ["danger-water"],
    "water": ["danger-water", "no-water-break"],
    "traffic": ["danger-traffic"],
    "vehicles": ["danger-traffic"],
    "jewellery": ["danger-jewellery"],
    "broken-kit": ["danger-broken-kit"],
    "care": ["danger-care"],
    "volume": ["danger-volume", "danger-exhaustion"],
}
# Checks about danger and care; the others are about form, time and kit.
CARE = {name for names in FITS.values() for name in names} | {
    "one-side-only", "unpaired-shape", "too-much-load", "too-many-hours", "too-few-rest-days",
    "stretch-before-raise", "stretch-too-long",
}
WEIGHTS = ("warning", "error")


def findings(program, folder, names):
    """What the program says of each plan, all asked for at once: {file: [(check, lines it stands on, message)]}."""
    run = subprocess.run([program, "check", "--messages", "json", *names], cwd=folder, capture_output=True, text=True,
                         check=False)
    if run.returncode > 1:
        sys.exit(f"{folder}: the program failed: {run.stderr}")
    found = {name: [] for name in names}
    for line in (run.stdout + run.stderr).splitlines():
        if not line.startswith("{"):
            continue
        one = json.loads(line)
        name = pathlib.PurePath(one.get("path", "")).name
        if one.get("severity") not in WEIGHTS or name not in found:
            continue
        lines = {one.get("line", 0)} | {label.get("line", 0) for label in one.get("labels", [])}
        found[name].append((one["name"], lines, one["message"]))
    return found


def parent_line(text, line):
    """The line of the drill that an indented line belongs to, else the line itself."""
    lines = text.splitlines()
    at = line - 1
    while 0 < at < len(lines) and lines[at][:1] in " \t":
        at -= 1
    return at + 1


def main():
    words = argparse.ArgumentParser()
    words.add_argument("program")
    words.add_argument("folder", type=pathlib.Path)
    words.add_argument("-v", action="store_true", help="list what was missed and who was accused")
    words.add_argument("--least", type=float, default=0, help="percent of bad plans to notice")
    words.add_argument("--most", type=float, default=100, help="percent of sound plans accused")
    asked = words.parse_args()
    program = str(pathlib.Path(asked.program).resolve())
    coded = json.loads((asked.folder / "coded.json").read_text())
    bad = good = noticed = accused = 0
    said_of = findings(program, asked.folder, sorted({entry["file"] for entry in coded}))
    for entry in coded:
        found = said_of[entry["file"]]
        text = (asked.folder / entry["file"]).read_text()
        if entry.get("good"):
            good += 1
            wrong = [f"{name}: {message}" for name, _, message in found if name in CARE]
            accused += bool(wrong)
            if wrong and asked.v:
                print(f"accused {entry['file']}: " + "\n    ".join(wrong))
            continue
        bad += 1
        fits = FITS.get(entry["reason"], CARE)  # a reason of its own: any word of care counts
        places = {entry["line"], parent_line(text, entry["line"])} - {0}
        if any(name in fits and (not places or lines & places) for name, lines, _ in found):
            noticed += 1
        elif asked.v:
            said = text.splitlines()[entry["line"] - 1] if entry["line"] else "(missing)"
            print(f"missed {entry['file']}:{entry['line']} {entry['reason']}: {said.strip()}\n    "
                  f"found: {[(name, sorted(lines)) for name, lines, _ in found if name in CARE]}")
    shares = [100 * noticed / max(bad, 1), 100 * accused / max(good, 1)]
    print(f"noticed {noticed} of {bad} ({shares[0]:.1f} %), accused {accused} of {good} sound "
          f"({shares[1]:.1f} %)")
    return shares[0] < asked.least or shares[1] > asked.most


if __name__ == "__main__":
    sys.exit(main())
