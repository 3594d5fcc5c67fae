#!/usr/bin/python3
"""Small pictures of representative sheets, against those that were looked at and found good.

usage: golden.py PROGRAM REPOSITORY WORK_FOLDER [--update] [NAME…]

tests/golden/sheets.txt names the sheets and the command that makes each; tests/golden/NAME.png is all of its pages beside
each other, grey, 24 dots an inch, rendered by poppler. A sheet that looks otherwise fails, and WORK_FOLDER/NAME.png then shows
what it was, what it is, and in red what is gone and in blue what is new. --update takes what is for good: look first.
"""
import os
import pathlib
import shlex
import shutil
import subprocess
import sys

from PIL import Image, ImageChops

DOTS = 24
# Two versions of poppler may smooth an edge differently: a pixel differs when it does so by more than a quarter of the
# range, and a sheet when more than one pixel in 2,000 does.
LEAST, MOST = 64, 1 / 2000

program, repository, work = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
update = "--update" in sys.argv
only = [a for a in sys.argv[4:] if a != "--update"]
golden = repository / "tests" / "golden"
failures = []


def run(command, cwd):
    environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "HOME": str(work)}
    if "CHALKLEAF_DATA" in os.environ:
        environment["CHALKLEAF_DATA"] = os.environ["CHALKLEAF_DATA"]
    return subprocess.run([str(c) for c in command], cwd=cwd, env=environment, capture_output=True, text=True)


def rendered(name, command):
    """All pages of the PDF that the command makes, beside each other; an error as text."""
    folder = work / "made" / name
    folder.mkdir(parents=True)
    words, wanted = shlex.split(command), "*.pdf"
    if words[0].startswith("*"):
        wanted = words.pop(0)
    ran = run([program, *[w.replace("OUT", str(folder)) for w in words]], club)
    found = sorted(folder.rglob(wanted))
    if ran.returncode > 1 or len(found) != 1:
        return "%s\n%d PDFs\n%s%s" % (command, len(found), ran.stdout, ran.stderr)
    run(["pdftoppm", "-r", DOTS, "-gray", "-png", found[0], folder / "page"], folder)
    pages = [Image.open(p).convert("L") for p in sorted(folder.glob("page*.png"))]
    gap = 4
    whole = Image.new("L", (sum(p.width + gap for p in pages) + gap, max(p.height for p in pages) + 2 * gap), 128)
    x = gap
    for page in pages:
        whole.paste(page, (x, gap))
        x += page.width + gap
    return whole


def difference(was, now):
    """The share of pixels that differ, and a picture of it."""
    size = (max(was.width, now.width), max(was.height, now.height))
    both = []
    for one in (was, now):
        canvas = Image.new("L", size, 128)
        canvas.paste(one, (0, 0))
        both.append(canvas)
    far = ImageChops.difference(*both).point(lambda v: 255 if v > LEAST else 0)
    share = sum(far.histogram()[128:]) / (size[0] * size[1])
    # Gone: dark before, light now. It keeps the red light of now and loses the others, and so on.
    shown = Image.merge("RGB", (both[1], ImageChops.darker(*both), both[0]))
    stack = Image.new("RGB", (size[0], 3 * size[1] + 8), (255, 255, 255))
    for i, picture in enumerate((both[0], both[1], shown)):
        stack.paste(picture.convert("RGB"), (0, i * (size[1] + 4)))
    return share, stack


shutil.rmtree(work, ignore_errors=True)
work.mkdir(parents=True)
club = work / "club"
shutil.copytree(repository / "plans", club, ignore=shutil.ignore_patterns("out", "private"))
shutil.copytree(golden / "plans", club / "sessions" / "golden")
# Sheets name the plan's revision where there is a repository; here there is none, whatever folder this is run in.
(club / ".git").write_text("gitdir: nowhere\n")
entries = []
for line in (golden / "sheets.txt").read_text().splitlines():
    if line.strip() and not line.startswith("#"):
        name, command = line.split(":", 1)
        entries.append((name.strip(), command.strip()))
for name, command in entries:
    if only and name not in only:
        continue
    now = rendered(name, command)
    path = golden / (name + ".png")
    if isinstance(now, str):
        failures.append("%s: %s" % (name, now))
        continue
    now = now.quantize(16).convert("L")
    if update:
        now.quantize(16).save(path, optimize=True)
        continue
    if not path.exists():
        failures.append("%s: there is no tests/golden/%s.png; look at the sheet, then run with --update" % (name, name))
        continue
    share, picture = difference(Image.open(path).convert("L"), now)
    if share > MOST:
        picture.save(work / (name + ".png"))
        failures.append("%s: %.2f %% of it looks otherwise; see %s" % (name, 100 * share, work / (name + ".png")))
known = {name for name, _ in entries}
for picture in golden.glob("*.png"):
    if picture.stem not in known:
        failures.append("%s is no sheet of sheets.txt" % picture.name)
for failure in failures:
    print(failure)
print("%d sheets, %d failed" % (len(entries), len(failures)))
sys.exit(1 if failures else 0)
