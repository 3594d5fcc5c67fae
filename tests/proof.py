#!/usr/bin/python3
"""`proof` from outside: its pictures are those of the PDF's pages, all of them and no others.

usage: proof.py PROGRAM WORK_FOLDER

Poppler draws the PDFs that `build` makes; the pictures of `proof` have to be the same, pixel for pixel, and as large as the paper
is at the dots asked for (ISO 216: A5 is 148 by 210 mm). A plan that got shorter leaves no page of its longer self behind, a plan
with errors none at all, and where poppler is not there the message says what to install.
"""
import pathlib
import shutil
import subprocess
import sys
import os

from PIL import Image

program, work = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve()
failures, checked = [], 0
HEAD = "---\ntitle: Shapes\nplace: gym\n---\n\n> **Safety.** Keep the strip clear.\n\n## Warm-up\n\n- Easy run: 2 min\n\n## Shapes\n\n"
FOOT = "\n## Cool-down\n\n- Slow walk: 1 min\n"


def check(right, what):
    global checked
    checked += 1
    if not right:
        failures.append(what)


def plan(drills):
    rows = "".join("- Shape number %d: 2 x 20 s, rest 10 s\n  - cue: long legs, toes pointed, eyes on the far wall, and not a wobble\n  - easier: bend one knee\n" % (i + 1) for i in range(drills))
    (work / "shapes.md").write_text(HEAD + rows + FOOT)


def run(*words, path=os.environ["PATH"]):
    return subprocess.run([program, *words], cwd=work, capture_output=True, text=True, env={"PATH": path, "LC_ALL": "C.UTF-8"})


def pictures():
    return sorted(p.name for p in (work / "out").rglob("*.png"))


shutil.rmtree(work, ignore_errors=True)
work.mkdir(parents=True)
plan(48)
check(run("build", "shapes.md").returncode == 0, "build failed")
ran = run("proof", "shapes.md", "--dots", "60")
check(ran.returncode == 0, "proof failed: " + ran.stderr)
subprocess.run(["pdftoppm", "-r", "60", "-png", "out/shapes-card.pdf", "page"], cwd=work, check=True)
wanted = sorted(work.glob("page*.png"))
check(len(wanted) > 1, "the long plan has %d pages" % len(wanted))
check(ran.stdout == "1 plan: %d pictures in out/proof\n" % len(wanted), "said: " + ran.stdout)
check(pictures() == ["shapes-card-%d.png" % (i + 1) for i in range(len(wanted))], "pictures: %s" % pictures())
for i, page in enumerate(wanted):
    made = Image.open(work / "out/proof" / ("shapes-card-%d.png" % (i + 1)))
    check(list(made.getdata()) == list(Image.open(page).getdata()), "page %d is another picture" % (i + 1))
    check(abs(made.width - 148 / 25.4 * 60) <= 1 and abs(made.height - 210 / 25.4 * 60) <= 1, "page %d is %s" % (i + 1, made.size))
plan(2)
check(run("proof", "shapes.md").returncode == 0, "proof of the short plan failed")
check(pictures() == ["shapes-card-1.png"], "after a shorter plan: %s" % pictures())
(work / "shapes.md").write_text(HEAD + "- Dish hold: 20 smurfs\n" + FOOT)
ran = run("proof", "shapes.md")
check(ran.returncode == 1 and pictures() == [], "after a plan with errors: %d, %s" % (ran.returncode, pictures()))
plan(2)
ran = run("proof", "shapes.md", path="/nonexistent")
check(ran.returncode == 1 and "apt-get install poppler-utils" in ran.stderr and pictures() == [], "without poppler: " + ran.stderr)
for dots in ("19", "601", "many"):
    check(run("proof", "shapes.md", "--dots", dots).returncode == 2, "%s dots are taken" % dots)
for failure in failures:
    print(failure)
print("%d checked, %d failed" % (checked, len(failures)))
sys.exit(1 if failures or checked < 15 else 0)
