#!/usr/bin/env python3
"""How much of coaches' rotations does the program read, and which slips of their grids does it name?

usage: rota_score.py PROGRAM FOLDER [--odd | --even] [-v]

FOLDER holds NAME.md, a draft as typed, and NAME.json: groups, stations, turns (`begin`, `minutes`, `places`), `breaks` and
`slips` as its author meant them. `PROGRAM times --json NAME.md` must say the same under `rotations`.
"""
import json
import pathlib
import re
import subprocess
import sys

program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
loud = "-v" in sys.argv
score = {}


def count(name, hit, whole, what=""):
    got, all_ = score.get(name, (0, 0))
    score[name] = (got + hit, all_ + whole)
    if loud and hit < whole:
        print(f"  {name} {hit} of {whole} {what}")


def plain(text):
    return re.sub(r"[^a-z0-9]+", " ", str(text).lower()).strip()


def clock(text):
    hour, minute = str(text).split(":")
    return int(hour) * 60 + int(minute)


def score_slips(meant, found):
    """A slip is named when one of its kind is found of its group, or in its turn; the rest were made up."""
    left = list(found)
    for slip in meant:
        kind = plain(slip.get("kind", slip.get("what", "")))
        turn, line = slip.get("turn"), slip.get("line")
        groups = [plain(g) for g in ([slip["group"]] if slip.get("group") else slip.get("groups", []))]
        same = [f for f in left if (not groups or plain(f["group"]) in groups) and
                (turn is None or f["turn"] in (None, turn) or f["line"] == line)]
        same = [f for f in same if plain(f["kind"]).split()[0][:5] in kind or kind[:5] in plain(f["kind"])] or same
        count("slips named", 1 if same else 0, 1, slip)
        if same:
            left.remove(same[0])
    if not meant:
        count("sound grids left alone", 0 if left else 1, 1, left)


def score_one(path):
    meant = json.loads(path.with_suffix(".json").read_text())
    ran = subprocess.run([program, "times", "--json", str(path)], capture_output=True, text=True)
    rotations = json.loads(ran.stdout or "{}").get("rotations", [])
    found = rotations[0] if rotations else None
    if loud:
        print(path.name, "found" if found else "nothing found")
    if meant.get("grid") == "none":
        count("grids left to be proposed", 1 if found and found["grid"] == "proposed" else 0, 1)
        count("groups", len({plain(g) for g in meant["groups"]} & {plain(g["name"]) for g in (found or {"groups": []})["groups"]}),
              len(meant["groups"]), meant["groups"])
        return
    empty = {"groups": [], "stations": [], "turns": [], "breaks": [], "slips": []}
    found = found or empty
    count("rotations", 1 if found["turns"] else 0, 1)
    for key in ("groups", "stations"):
        names = {plain(g["name"]) for g in found[key]}
        count(key, len({plain(g) for g in meant[key]} & names), len(set(map(plain, meant[key])) | names), (meant[key], sorted(names)))
    count("turns", 1 if len(found["turns"]) == len(meant["turns"]) else 0, 1, len(found["turns"]))
    for i, turn in enumerate(meant["turns"]):
        got = found["turns"][i] if i < len(found["turns"]) else {"begin": None, "minutes": None, "places": {}}
        if turn.get("begin"):
            count("clocks", 1 if got["begin"] and clock(got["begin"]) == clock(turn["begin"]) else 0, 1, (turn["begin"], got["begin"]))
        if turn.get("minutes"):
            count("minutes", 1 if got["minutes"] == turn["minutes"] else 0, 1, (turn["minutes"], got["minutes"]))
        places = {plain(k): [plain(p) for p in v] for k, v in got["places"].items()}
        for group, place in turn["places"].items():
            seen = places.get(plain(group), [])
            right = (not seen or seen == ["rest"]) if place in (None, "rest") else any(plain(place) == p for p in seen)
            count("cells", 1 if right else 0, 1, (i + 1, group, place, seen))
    for pause in meant.get("breaks", []):
        same = [p for p in found["breaks"] if p["after_turn"] == pause["after_turn"]]
        count("breaks", 1 if same and same[0]["minutes"] == pause["minutes"] else 0, 1, (pause, same))
    score_slips(meant.get("slips", []), found["slips"])


for path in sorted(folder.glob("*.md")):
    number = re.fullmatch(r"\d+", path.stem)
    if not number or not path.with_suffix(".json").exists():
        continue
    odd = int(path.stem) % 2 == 1
    if ("--odd" in sys.argv and not odd) or ("--even" in sys.argv and odd):
        continue
    score_one(path)
for name, (hit, whole) in score.items():
    print(f"{name} {hit} of {whole} ({100 * hit // max(whole, 1)} %)")
