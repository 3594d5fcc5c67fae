#!/usr/bin/env python3
"""`chalkleaf figure` and `chalkleaf figures`, from outside: the SVG and the PDF of a figure are the same picture, a catalogue has
every figure with its words, and who asks for what is not there is told what to write.

usage: figure_commands.py PROGRAM REPOSITORY WORK_FOLDER

librsvg draws the SVG, poppler the PDF, cut to the box that the PDF's structure tree gives its Figure (read by pikepdf); Pillow
lays one over the other.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys

import pikepdf
from PIL import Image, ImageChops

program, repository, work = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve(), pathlib.Path(sys.argv[3]).resolve()
failures = []
passed = 0


def expect(what, holds, seen=""):
    global passed
    if holds:
        passed += 1
    else:
        failures.append(f"{what}: {seen}")


def run(*arguments, folder=None):
    environment = {"PATH": os.environ["PATH"], "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    if "CHALKLEAF_DATA" in os.environ:
        environment["CHALKLEAF_DATA"] = os.environ["CHALKLEAF_DATA"]
    return subprocess.run([program, *arguments], cwd=folder or work, env=environment, capture_output=True, text=True, timeout=60)


def elements(node, role):
    kids = node.get("/K")
    found = [node] if node.get("/S") == role else []
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            found += elements(kid, role)
    return found


def cut(image):
    """Without the white round it."""
    box = ImageChops.invert(image).point(lambda v: 255 if v > 40 else 0).getbbox()
    return image.crop(box)


def same_picture(name):
    stem = name.replace(" ", "-")
    for ending in ("svg", "pdf"):
        made = run("figure", *name.split(), "--out", f"{stem}.{ending}")
        expect(f"{name} as {ending}", made.returncode == 0 and made.stdout == f"1 figure in {stem}.{ending}\n", made)
    subprocess.run(["rsvg-convert", "-w", "900", "-b", "white", f"{stem}.svg", "-o", f"{stem}-svg.png"], cwd=work, check=True)
    subprocess.run(["pdftoppm", "-r", "144", "-png", "-singlefile", f"{stem}.pdf", f"{stem}-pdf"], cwd=work, check=True)
    with pikepdf.open(work / f"{stem}.pdf") as pdf:
        figures = elements(pdf.Root.StructTreeRoot, "/Figure")
        expect(f"{name}: one Figure with its words", len(figures) == 1 and len(str(figures[0].Alt)) > 10, figures)
        left, bottom, right, top = (float(v) for v in figures[0].A.BBox)
        height = float(pdf.pages[0].MediaBox[3])
    page = Image.open(work / f"{stem}-pdf.png").convert("L")
    drawn = cut(page.crop(tuple(int(v * 2) for v in (left - 1, height - top - 1, right + 1, height - bottom + 1))))
    svg = cut(Image.open(work / f"{stem}-svg.png").convert("L"))
    # Shape first, then what covers what: 1 where both are dark.
    expect(f"{name}: as wide for its height", abs(drawn.width / drawn.height - svg.width / svg.height) < 0.03 * svg.width / svg.height,
           (drawn.size, svg.size))
    size = (500, max(1, round(500 * svg.height / svg.width)))
    one, other = (i.resize(size, Image.LANCZOS).point(lambda v: 255 if v < 180 else 0) for i in (drawn, svg))
    both = ImageChops.multiply(one, other).histogram()[255]
    either = ImageChops.lighter(one, other).histogram()[255]
    expect(f"{name}: the same picture", either > 2000 and both / either > 0.93, both / max(1, either))


shutil.rmtree(work, ignore_errors=True)
work.mkdir(parents=True)
for name in ("front support", "bridge", "star", "lunge", "wall handstand", "chair support", "towel pull overhead", "leg lift", "beam walk",
             "straddle sit", "side-lying arch", "head turns"):
    same_picture(name)

# ---- what is asked for is not there
for arguments, said in (
        (["figure", "front", "suport"], "there is no figure ‘front suport’: did you mean ‘front support’?"),
        (["figure", "zzzzzz"], "‘chalkleaf figures’ draws all there are"),
        (["figure", "bridge", "--out", "bridge.png"], "should end in .pdf or .svg"),
        (["figure", "bridge", "star", "--out", "two.svg"], "an SVG file holds one figure"),
        (["figures", "nowhere"], "is not a folder"),
        (["figures", "--out", "all.svg"], "should end in .pdf"),
        (["figure", "bridge", "--out", "/proc/none/x.pdf"], "cannot be written")):
    made = run(*arguments)
    expect(" ".join(arguments), made.returncode == 2 and said in made.stderr, made)
expect("nothing half-written", not (work / "two.svg").exists() and not (work / "bridge.png").exists())

# ---- several on pages of their own; other sizes
made = run("figure", "bridge", "star", "--out", "two.pdf", "--paper", "a5", "--age", "6")
with pikepdf.open(work / "two.pdf") as pdf:
    expect("two pages of A5", len(pdf.pages) == 2 and abs(float(pdf.pages[0].MediaBox[2]) - 419.528) < 0.01, made)
again = (work / "two.pdf").read_bytes()
run("figure", "bridge", "star", "--out", "two.pdf", "--paper", "a5", "--age", "6")
expect("the same bytes again", (work / "two.pdf").read_bytes() == again)

# ---- the whole catalogue, and a club's own with something wrong
made = run("figures", "--out", "all.pdf")
names = set()
for path in sorted((repository / "themes/figures").glob("*.yaml")):
    names |= set(re.findall(r"^  ([^\s:][^:]*):(?:\s|$)", path.read_text(), re.M))
expect("all figures are counted", made.returncode == 0 and made.stdout == f"{len(names)} figures in all.pdf\n", (len(names), made))
words = " ".join(subprocess.run(["pdftotext", "all.pdf", "-"], cwd=work, capture_output=True, text=True, check=True).stdout.split())
missing = [n for n in names if n not in words]
expect("every name is on the sheet", len(names) >= 80 and not missing, missing)
with pikepdf.open(work / "all.pdf") as pdf:
    texts = [str(f.get("/Alt", "")) for f in elements(pdf.Root.StructTreeRoot, "/Figure")]
expect("every figure has words of its own", len(texts) == len(set(texts)) == len(names) and all(texts), (len(texts), len(set(texts))))

own = work / "club"
(own / "figures").mkdir(parents=True)
(own / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
(own / "figures/own.yaml").write_text("family: Ours\nfigures:\n  leaning tower: {touches: feet, lean: 40}\n  tall: {touches: feet}\n")
made = run("figures", "--out", "own.pdf", str(own / "figures"))
words = " ".join(subprocess.run(["pdftotext", "own.pdf", "-"], cwd=work, capture_output=True, text=True, check=True).stdout.split())
expect("only the folder's own", made.stdout == "2 figures in own.pdf\n" and "leaning tower" in words and "Ours" in words, made)
expect("what is wrong stands on the sheet and is told", "centre of mass" in words and "[figure-falls]" in made.stderr, (words, made.stderr))
(own / "sessions").mkdir()
made = run("figure", "tall", "--out", "tall.svg", folder=own / "sessions")
expect("a club's own figure is found where one stands in it", made.returncode == 0, made)

print("\n".join(failures))
print(f"{passed} passed, {len(failures)} failed")
sys.exit(1 if failures else 0)
