#!/usr/bin/env python3
"""Lines to learn the guard's second reading from, out of plans whose danger is known.

    guard_lines.py FOLDER… > lines.txt

A folder with coded.json (see guard_score.py) gives its coded lines with their check, and all others
as sound ones; of a folder without it every line is sound. Each line is said once.
"""
import json
import pathlib
import re
import sys

from guard_score import FITS
from guard_shelf import lines_of


def units(text):
    """The entries of a plan: first line, last line, what it begins with (`- `, `# `), its words."""
    out, front, going_on = [], text.startswith("---"), False
    for number, whole in enumerate(text.splitlines(), 1):
        line = whole.strip()
        if front:
            if number > 1 and line == "---":
                front = False
            elif whole.startswith(("safety:", "note:")):
                out.append([number, number, "", line.split(":", 1)[1].strip()])
            continue
        entry = re.match(r"(?:[-*+]|\d{1,3}[.)]) (.*)", line)
        if not line or line.startswith("|"):
            going_on = False
        elif line.startswith("#"):
            out.append([number, number, "# ", line.lstrip("# ")])
            going_on = False
        elif entry:
            out.append([number, number, "- ", entry[1]])
            going_on = True
        elif going_on:
            out[-1][1] = number
            out[-1][3] += " " + line.lstrip("> ")
        else:
            out.append([number, number, "", line.lstrip("> ")])
            going_on = True
    return [one for one in out if one[3].strip(" -*_")]


# Of a plan that does not say where it is for: what only stands in one for home.
AT_HOME = re.compile(r"\b(at home|living room|sofa|rug|carpet|lawn|garden|mum|mom|dad|gran|grown-up)\b", re.I)


def place_of(text):
    written = re.search(r"^place:\s*(.*)", text, re.M)
    return "home" if (written[1].endswith("home") if written else AT_HOME.search(text)) else "gym"


def main():
    said = set()
    for folder in map(pathlib.Path, sys.argv[1:]):
        coded = folder / "coded.json"
        entries = json.loads(coded.read_text()) if coded.exists() else [
            {"file": str(path.relative_to(folder)), "good": True} for path in sorted(folder.rglob("*.md"))]
        for entry in entries:
            text = (folder / entry["file"]).read_text(errors="replace")
            places, entries_of_plan = [place_of(text)], units(text)
            if folder.name == "shelf" and text.startswith("---"):
                lines, at_home = lines_of(text)
                places = ["gym", "home"] if at_home else ["gym"]
                entries_of_plan = [(0, 0, "- ", line.splitlines()[-1].strip()[2:]) for line in lines]
            for first, last, mark, words in entries_of_plan:
                bad = not entry.get("good") and first <= entry["line"] <= last
                check = FITS[entry["reason"]][0] if bad and entry["reason"] in FITS else "danger" if bad else "ok"
                for place in places:
                    line = f"{place} {check} {mark}{words}"
                    if line not in said:
                        said.add(line)
                        print(line)


if __name__ == "__main__":
    main()
