#!/usr/bin/python3
"""The code on the sheets, read back from the rendered page by another program (zbar).

usage: qr.py PROGRAM WORK_FOLDER

Builds plans whose addresses are the club's with the plan's name in it, the plan's own, and as long as one may be;
renders each sheet as a grey office printer of 200 dots an inch would, and asks of it:
  zbarimg        reads exactly one code, and it is the address
  pixels         a ring four modules wide round the code is paper (ISO/IEC 18004: the quiet zone is 4 modules)
  pdfinfo -url   the same address is a link
"""
import pathlib
import re
import shutil
import subprocess
import sys

import pikepdf
from PIL import Image

program, work = sys.argv[1], pathlib.Path(sys.argv[2])
failures, checked = [], 0
DOTS = 200  # an inch
PLAN = "---\ntitle: {title}\nplace: home\n{web}---\n\n> **Safety.** Clear two big steps of floor all round. An adult stays in the room.\n\n" \
       "## Warm-up\n\n- March on the spot: 1 min\n\n## Shapes\n\n- Balance on one leg: 2 x 20 s, rest 20 s\n\n" \
       "## Cool-down\n\n- Child's pose: 30 s\n"
LONG = "https://alder-quay.example/" + "a1-" * 57 + "zz"
PLANS = {  # file name -> (front matter, the address wanted)
    "strong-shapes": ("", "https://alder-quay.example/plans/strong-shapes?from=paper"),
    "Week 2, übung": ("", "https://alder-quay.example/plans/Week%202%2C%20%C3%BCbung?from=paper"),
    "own": ("web: www.alder-quay.example/own\n", "https://www.alder-quay.example/own"),
    "long": ("web: %s\n" % LONG, LONG),
}


def run(*command):
    return subprocess.run([str(c) for c in command], capture_output=True, text=True)


def codes(png):
    out = run("zbarimg", "-q", "--nodbus", "--raw", png).stdout
    return out.splitlines()


def tagged_box(pdf):
    """Page number and box, in points from the top left, that the Figure of the code says it has."""
    with pikepdf.open(pdf) as document:
        for node in document.objects:
            if isinstance(node, pikepdf.Dictionary) and str(node.get("/Alt", "")).startswith("QR code"):
                left, bottom, right, top = (float(edge) for edge in node.A.BBox)
                for number, page in enumerate(document.pages, 1):
                    if page.obj.objgen == node.Pg.objgen:
                        height = float(page.MediaBox[3])
                        return number, (left, height - top, right, height - bottom)
    return None


def modules_of(address):
    """Modules a side at level M in byte mode: ISO/IEC 18004, table 7 (data capacity), versions 1 to 13."""
    capacities = [14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331]
    version = next(i for i, most in enumerate(capacities) if len(address) <= most)
    return 21 + 4 * version


def check_sheet(pdf, address):
    global checked
    checked += 1
    if " %s\n" % address not in run("pdfinfo", "-url", pdf).stdout:
        failures.append("%s: no link to %s" % (pdf.name, address))
    pages = int(re.search(r"Pages:\s+(\d+)", run("pdfinfo", pdf).stdout).group(1))
    read = {}
    for page in range(1, pages + 1):
        root = work / ("%s-%d" % (pdf.stem, page))
        run("pdftoppm", "-r", DOTS, "-gray", "-png", "-singlefile", "-f", page, "-l", page, pdf, root)
        for data in codes("%s.png" % root):
            read.setdefault(data, []).append(page)
    tagged = tagged_box(pdf)
    if tagged is None or read != {address: [tagged[0]]}:
        failures.append("%s: read %s, not %s as tagged: %s" % (pdf.name, read, address, tagged))
        return
    page, points = tagged
    image = Image.open(work / ("%s-%d.png" % (pdf.stem, page)))
    box = tuple(edge * DOTS / 72 for edge in points)
    module = (box[2] - box[0]) / modules_of(address)
    if not 0.4 <= module / DOTS * 25.4 <= 0.7:
        failures.append("%s: a module is %.2f mm" % (pdf.name, module / DOTS * 25.4))
    quiet = 4 * module - 1  # a pixel for where edges fall between pixels
    dark = dark_box(image, box[0] - quiet, box[1] - quiet, box[2] + quiet, box[3] + quiet)
    if max(abs(a - b) for a, b in zip(dark, box)) > 1.5:
        failures.append("%s: the code at %s has dark marks round it: %s" % (pdf.name, box, dark))


def dark_box(image, left, top, right, bottom):
    """The box of what is darker than half grey inside."""
    at = (max(0, round(left)), max(0, round(top)))
    inside = image.crop((*at, round(right) + 1, round(bottom) + 1)).point(lambda v: 255 if v < 128 else 0)
    box = inside.getbbox()
    return (box[0] + at[0], box[1] + at[1], box[2] + at[0], box[3] + at[1])


shutil.rmtree(work, ignore_errors=True)
(work / "club/sessions").mkdir(parents=True)
(work / "club/club.yaml").write_text(
    "name: Alder Quay Gymnastics\nweb: https://alder-quay.example/plans/{plan}?from=paper\n")
for name, (front, _) in PLANS.items():
    (work / "club/sessions" / (name + ".md")).write_text(PLAN.format(title="Strong shapes", web=front))
built = run(program, "build", work / "club", "--out", work / "out")
if built.returncode != 0:
    failures.append(built.stdout + built.stderr)
for name, (_, address) in PLANS.items():
    for kind in ("card", "sheet"):
        found = sorted(work.glob("out/**/%s-%s.pdf" % (name, kind)))
        if len(found) == 1:
            check_sheet(found[0], address)
        else:
            failures.append("%d PDFs of %s-%s" % (len(found), name, kind))
for failure in failures:
    print(failure)
print("%d sheets, %d failed" % (checked, len(failures)))
sys.exit(1 if failures or checked < 2 * len(PLANS) else 0)
