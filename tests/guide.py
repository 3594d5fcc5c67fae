#!/usr/bin/env python3
"""Runs every block of a guide: what it shows must be what the program does.

usage: guide.py PROGRAM GUIDE WORK_FOLDER [--update]

A `markdown` block that begins with `---` is a whole plan, or a drill file where it has a `kind:`; any other is a piece of a plan
and is set between a warm-up and a cool-down. A `yaml` block is a club file, or a file of figures where it has a `figures:`; then
the plans below it are in a club that has these figures. Each must be checked without any message, unless a comment
`<!-- finds: NAME -->` stands above it: then exactly that check must speak. A `text` block under `<!-- times -->` is what `times`
says of the last plan, word for word (--update writes it). A block in any other language is not run, and only `sh` may be. The
example clubs beside the guide must be checked without any message, too.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys

program, guide, work = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
update = "--update" in sys.argv
BLOCK = re.compile(r"(?:<!-- (?P<note>[a-z]+)(?:: (?P<name>[a-z-]+))? -->\n)?^```(?P<kind>\w*)\n(?P<text>.*?)^```$", re.M | re.S)
# A dish and an arch beside whatever stands there, so that a piece with one of the two needs no other.
FRAME = "---\ntitle: A piece\nplace: gym\n---\n\n## Warm-up\n\n- Jog along the strip: 2 min\n- Dish hold: 5 s\n- Arch hold: 5 s\n\n{}\n## Cool-down\n\n- Slow walk: 1 min\n"
failures, ran = [], 0


def run(folder, *arguments):
    environment = {"PATH": os.environ["PATH"], "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    for key in ("CHALKLEAF_DATA",):
        if key in os.environ:
            environment[key] = os.environ[key]
    return subprocess.run([program, *arguments], cwd=folder, env=environment, capture_output=True, text=True, timeout=60)


def fresh():
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)


def write_figures():
    (work / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
    (work / "figures").mkdir()
    (work / "figures" / "our-own.yaml").write_text(figures)


def found(folder, *arguments):
    said = run(folder, "check", "--messages", "short", *arguments)
    names = set(re.findall(r" \[([a-z-]+)\](?:;|$)", said.stderr, re.M))
    return names, said.stderr


def expect(block, wanted, names, said):
    if names != wanted or (not wanted and said):
        failures.append(f"expected {sorted(wanted) or 'nothing'}, found {sorted(names)} in\n{block}\n{said}")


text = guide.read_text()
last_plan = figures = ""
for match in BLOCK.finditer(text):
    kind, block = match["kind"], match["text"]
    wanted = {match["name"]} if match["note"] == "finds" else set()
    if kind == "sh":
        continue
    ran += 1
    if kind == "yaml" and "\nfigures:\n" in block:
        fresh()
        figures = block
        write_figures()
        expect(block, wanted, *found(work, "club.yaml"))
    elif kind == "yaml":
        fresh()
        (work / "club.yaml").write_text(block)
        expect(block, wanted, *found(work, "club.yaml"))
    elif kind == "markdown" and block.startswith("---\n") and "\nkind: " in block:
        fresh()
        (work / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
        (work / "drills").mkdir()
        (work / "drills" / "drill.md").write_text(block)
        expect(block, wanted, *found(work, "drills/drill.md"))
    elif kind == "markdown":
        fresh()
        if not block.startswith("---\n"):
            block = FRAME.format(block if block.startswith("## ") else "## Today\n\n" + block)
        last_plan = block
        if figures:
            write_figures()
        (work / "plan.md").write_text(block)
        expect(block, wanted, *found(work, "plan.md"))
    elif kind == "text" and match["note"] == "times":
        fresh()
        (work / "plan.md").write_text(last_plan)
        said = run(work, "times", "plan.md").stdout
        if said != block and not update:
            failures.append(f"times says\n{said}, the guide\n{block}")
        text = text.replace(block, said)
    else:
        failures.append(f"no way to run this block ({kind or 'no language'}):\n{block}")
clubs = sorted(path.parent for path in guide.parent.glob("*/club.yaml") if path.parent.name != "begin")
for club in clubs:
    fresh()
    copy = shutil.copytree(club, work / club.name)
    ran_there = run(copy, "check", "--strict", "--messages", "short", ".")
    if ran_there.returncode != 0 or "[" in ran_there.stderr:
        failures.append(f"{club.name}: {ran_there.stderr}")
if len(clubs) < 2:
    failures.append(f"only {len(clubs)} example clubs were found")
if update:
    guide.write_text(text)
if ran < 10:
    failures.append(f"only {ran} blocks were found")
print("\n".join(failures) or f"{ran} blocks run")
sys.exit(1 if failures else 0)
