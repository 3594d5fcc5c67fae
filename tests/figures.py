#!/usr/bin/env python3
"""librsvg draws every figure of the catalogue: well-formed, not blank, and standing on the ground.

usage: figures.py PROGRAM REPOSITORY WORK_FOLDER     PROGRAM: figure_svg of the build

An XML parser reads each SVG (its title is the figure's name, its description is not empty), rsvg-convert renders it,
and Pillow counts pixels: some are dark, most are not, dark ones lie all along the row where the program says the
ground is, and what stands is dark just above it.
"""
import concurrent.futures
import pathlib
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ET

from PIL import Image

program, repository, work = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
SVG = "{http://www.w3.org/2000/svg}"
UNITS_A_METRE = 500
MARGIN = 0.04  # metres round a drawing, as src/figure/svg.cpp has it
HEIGHT = 260  # pixels

# With and without the shipped catalogue: these stay the same.
OWN = """family: Own
figures:
  standing: {touches: feet}
  front support: {touches: [hands, toes], joints: {shoulder: 75}}
  handstand: {touches: hands, joints: {shoulder: 180}}
  star: {view: front, touches: feet, joints: {hip out: 25, shoulder out: 125}}
  jump & land <high>: {show: row, frames: [{height: 0.3}, {touches: feet}]}
"""


def numbers(path):
    return [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", path)]


def dark(image, row):
    return sum(image.crop((0, row, image.width, row + 1)).histogram()[:100])


def look(path, ground, stands, name):
    problems = []
    root = ET.parse(path).getroot()
    if root.tag != SVG + "svg":
        problems.append("the root is no svg")
    if root.findtext(SVG + "title") != name:
        problems.append(f"the title is {root.findtext(SVG + 'title')!r}")
    if len(root.findtext(SVG + "desc") or "") < 10:
        problems.append("no description")
    width, height = (float(root.get(k)) for k in ("width", "height"))
    if not (50 < width < 10000 and 50 < height < 3000):
        problems.append(f"its size is {width} x {height}")
    for element in root.iter(SVG + "path"):
        if not numbers(element.get("d")):
            problems.append("a path without numbers")
    png = path.with_suffix(".png")
    subprocess.run(["rsvg-convert", "-h", str(HEIGHT), "-b", "white", str(path), "-o", str(png)], check=True)
    image = Image.open(png).convert("L")
    total = image.width * image.height
    share = sum(image.histogram()[:100]) / total
    if not 0.005 < share < 0.75:
        problems.append(f"{share:.2%} of it is dark")
    if ground != "none":
        at = (float(ground) + MARGIN) * UNITS_A_METRE / height * image.height
        line = 0.012 * UNITS_A_METRE / height * image.height  # the ground is drawn below its own height
        rows = range(int(at), min(image.height, int(at + line) + 2))
        reached = max(dark(image, row) for row in rows)
        if reached < image.width * 0.25:  # in a row of pictures each has a ground of its own
            problems.append(f"only {reached} of {image.width} pixels are dark where the ground is")
        above = int(at - 0.02 * UNITS_A_METRE / height * image.height)
        standing = dark(image, above)
        if stands == "stands" and not 0 < standing < image.width:
            problems.append(f"{standing} of {image.width} pixels are dark above the ground")
    return problems


def main():
    if shutil.which("rsvg-convert") is None:
        sys.exit("rsvg-convert is missing: .ci/setup test")
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    own = work / "own.yaml"
    own.write_text(OWN)
    failed = 0
    looked = 0
    for files in ([own], sorted((repository / "themes/figures").glob("*.yaml"))):
        if not files:
            continue
        folder = work / files[0].stem
        folder.mkdir()
        ran = subprocess.run([program, str(folder), *map(str, files)], capture_output=True, text=True)
        if ran.returncode != 0:
            sys.exit(f"{program}: exit {ran.returncode}\n{ran.stdout}{ran.stderr}")
        told = [line.split(" ", 3) for line in ran.stdout.splitlines()]
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            found = list(pool.map(lambda t: look(folder / f"{t[0]}.svg", *t[1:]), told))
        looked += len(told)
        for (number, _, _, name), problems in zip(told, found):
            for problem in problems:
                print(f"{name}: {problem} ({folder / number}.svg)")
            failed += len(problems)
    print(f"{looked} figures, {failed} problems")
    if failed or looked < 5:
        sys.exit(1)


main()
