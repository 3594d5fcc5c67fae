#!/usr/bin/env python3
"""The gallery of mistakes: every check of the program speaks where it should, alone, and is explained.

usage: mistakes.py PROGRAM GALLERY WORK_FOLDER [--update] [NAME…]

Each folder of the gallery is named after a check and holds a plan.md that provokes it, with a club and drills where it needs
them. `expected.messages` is what the program says, word for word: that check and no other. `explain` must know every check, and
every check must have a folder. An example of `explain` that is a file of figures must provoke its check, too. --update writes
what is said now; read it before you commit it.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys

program, gallery, work = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
update = "--update" in sys.argv
only = [a for a in sys.argv[4:] if not a.startswith("--")]
failures = []


def run(folder, *arguments):
    environment = {"PATH": os.environ["PATH"], "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    if "CHALKLEAF_DATA" in os.environ:
        environment["CHALKLEAF_DATA"] = os.environ["CHALKLEAF_DATA"]
    return subprocess.run([program, *arguments], cwd=folder, env=environment, capture_output=True, text=True, timeout=60)


def expect(what, holds, seen=""):
    if not holds:
        failures.append(f"{what}\n{seen}")


listed = run(gallery, "explain")
checks = re.findall(r"^([a-z]+(?:-[a-z]+)+)  ", listed.stdout, re.M)
folders = sorted(d.name for d in gallery.iterdir() if d.is_dir())
expect("explain lists no checks", len(checks) > 30, listed.stdout)
expect("checks and folders of the gallery differ", sorted(checks) == folders, sorted(set(checks) ^ set(folders)))

examples = 0
for name in folders:
    if only and name not in only:
        continue
    told = run(gallery, "explain", name)
    for part in ("What ", "Why ", "Source ", "Cure ", "Example "):
        expect(f"explain {name} lacks {part}", told.returncode == 0 and f"\n{part}" in told.stdout, told.stdout)
    example = re.search(r"^Example  (figures:\n(?: {9}.*\n)+)", told.stdout, re.M)
    if example:
        lines = example[1].replace("\n         ", "\n")
        folder = work / f"{name}-explained"
        shutil.rmtree(folder, ignore_errors=True)
        (folder / "figures").mkdir(parents=True)
        (folder / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
        (folder / "figures" / "own.yaml").write_text(lines)
        explained = run(folder, "check", "--messages", "short", "club.yaml").stderr
        found = set(re.findall(r" \[([a-z-]+)\](?:;|$)", explained, re.M))
        expect(f"explain {name} gives an example of {sorted(found)}", found == {name}, lines + explained)
        examples += 1
    copy = work / name
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(gallery / name, copy)
    (copy / "expected.messages").unlink(missing_ok=True)
    plans = sorted(p.name for p in copy.glob("plan*.md"))  # two, where one is in the way of the other
    said = run(copy, "build", "--messages", "short", *plans)
    messages = [line for line in said.stderr.splitlines() if re.search(r"^\S.*: (error|warning|note): ", line) or line.startswith("error: ")]
    names = {re.search(r" \[([a-z-]+)\](;|$)", line)[1] for line in messages}
    expect(f"{name}: found {sorted(names)}", names == {name}, said.stderr)
    text = "".join(line + "\n" for line in messages)
    path = gallery / name / "expected.messages"
    if update:
        path.write_text(text)
    expect(f"{name}: says\n{text}instead of", path.exists() and path.read_text() == text, path.exists() and path.read_text())
    errors = any("error: " in line for line in messages)
    expect(f"{name}: exit code {said.returncode}", (said.returncode != 0) == errors)

expect(f"only {examples} examples were files of figures", only or examples >= 6)
misspelt = run(gallery, "explain", "over-slott")
expect("explain suggests no name", misspelt.returncode == 2 and "did you mean over-slot?" in misspelt.stderr, misspelt.stderr)
print("\n".join(failures) or f"{len(folders)} mistakes are found and explained")
sys.exit(1 if failures else 0)
