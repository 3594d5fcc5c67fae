#!/usr/bin/env python3
"""What the shelf says, put into a well-formed plan, raises no danger: its names, cues, rungs and plain words.

    guard_shelf.py PROGRAM SHELF WORK-FOLDER

A line of a drill that the shelf keeps in the gym is put into a hall plan only. Prints what was said
and exits 1 when it is more than EXPECTED, which says why it may be.
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys

# Where, check, a part of the line: why the guard is right all the same, or what a coach would say to it.
EXPECTED = []

HEAD = """---
title: Everything on the shelf
place: {place}
---

> An adult of 18 or more stays in the room all the time. Clear the floor.
> Two coaches, 8 children of 12. Mats under everything, a coach spots. Water ready.

## Warm-up

- Jog: 6 min

## Main

"""
TAIL = "\n\n## Cool-down\n\n- Walk: 2 min\n"
LINES_OF_A_PLAN = 25


def lines_of(text):
    """What a drill of the shelf says, each as an entry of a plan; and whether it is for home."""
    _, front, body = text.split("---", 2)
    keys = dict(line.split(": ", 1) for line in front.strip().splitlines() if ": " in line)
    names = [keys["title"]] + [name.strip() for name in keys.get("also", "").split(",") if name.strip()]
    said = [f"- {name}: 5" for name in names]
    if "plain" in keys:
        said.append("- " + keys["plain"].strip('"'))
    for line in body.strip().splitlines():
        found = re.match(r"- (cue|easier|harder|family|note): (.*)", line)
        if found:
            said.append(f"- Zzz: 5\n  - {found[1]}: {found[2]}")
    kept = any(key in keys for key in ("spotter", "coach")) or keys.get("home") == "no"
    return said, not kept


def main():
    program, shelf, work = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    count, wrong, used = 0, [], set()
    for place in ("home", "gym"):
        entries = []
        for path in sorted(shelf.glob("*.md")):
            if path.name == "README.md":
                continue
            said, at_home = lines_of(path.read_text())
            if at_home or place == "gym":
                entries += said
        count += len(entries)
        files = []
        for at in range(0, len(entries), LINES_OF_A_PLAN):
            files.append(f"{place}-{at:05}.md")
            text = HEAD.format(place=place) + "\n".join(entries[at:at + LINES_OF_A_PLAN]) + TAIL
            (work / files[-1]).write_text(text)
        run = subprocess.run([program, "check", "--messages", "json", *files], cwd=work, capture_output=True,
                             text=True, check=False)
        for line in (run.stdout + run.stderr).splitlines():
            one = json.loads(line) if line.startswith("{") else {}
            if not one.get("name", "").startswith("danger") or one["severity"] == "note":
                continue
            text = (work / one["path"]).read_text().splitlines()
            for number in [one["line"]] + [label["line"] for label in one["labels"]]:
                known = [e for e in EXPECTED if e[:2] == (place, one["name"]) and e[2] in text[number - 1]]
                used.update(e[:3] for e in known)
                if not known:
                    wrong.append(f"{place} {one['name']}: {text[number - 1].strip()}\n    {one['message']}")
    wrong += [f"expected, and not said any more: {e[:3]}" for e in EXPECTED if e[:3] not in used]
    print("\n".join(wrong))
    print(f"{count} lines of the shelf, {len(wrong)} wrong")
    return bool(wrong) or count < 1000


if __name__ == "__main__":
    sys.exit(main())
