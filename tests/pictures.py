#!/usr/bin/python3
"""Pictures of a plan, from the file to the page and back.

usage: pictures.py PROGRAM REPOSITORY WORK_FOLDER

Pillow (Debian: python3-pil) makes pictures, Chalkleaf prints them, poppler takes them out of the PDF again, and what
comes out must be what Pillow sees in the file; the pages must show them where MuPDF draws them. Asks besides: nothing
a camera wrote is in the PDF; each picture is there once; the same bytes from any number of workers; the largest
picture that is allowed costs bounded time and memory; a plan can name nothing outside its club's folder.
"""
import os
import pathlib
import resource
import shutil
import subprocess
import sys
import time

import pikepdf
from PIL import Image, ImageChops, ImageOps

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
sys.path.insert(0, str(repository / "tests" / "picture"))
sys.dont_write_bytecode = True
import make_pictures  # noqa: E402

failures = []


def expect(holds, what):
    if not holds:
        failures.append(what)


def run(*command):
    return subprocess.run([str(c) for c in command], capture_output=True, text=True, errors="replace")


def club(name):
    folder = work / name
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "pictures").mkdir(parents=True)
    (folder / "sessions").mkdir()
    (folder / "club.yaml").write_text("name: Alder Quay Gymnastics\ngroups: {Wrens: {ages: 6-8, size: 6, adults: 2}}\nshelf: off\n")
    return folder


def plan(*pictures):
    body = "\n\n".join(pictures)
    return f"""---
title: Balance on a line
place: home
group: Wrens
slot: 4 min
---

> **Safety.** Clear the floor. An adult stays in the room.

## Warm-up

- March: 1 min
  - easier: gently

{body}

## Main

- Stand tall: 1 min
  - easier: hand on a wall

## Cool-down

- Breathe: 1 min
  - easier: slower
"""


def build(folder, *options):
    out = folder / "out"
    shutil.rmtree(out, ignore_errors=True)
    return run(program, "build", folder, "--out", out, *options), out


def taken_out(pdf):
    """The pictures of a PDF as poppler reads them: (rows of pdfimages -list, Pillow images)."""
    rows = [line.split() for line in run("pdfimages", "-list", pdf).stdout.splitlines()[2:]]
    stem = pdf.with_suffix("")
    for old in pdf.parent.glob(stem.name + "-[0-9]*.png"):
        old.unlink()
    run("pdfimages", "-png", pdf, stem)
    return rows, [Image.open(p).convert("RGB") for p in sorted(pdf.parent.glob(stem.name + "-[0-9]*.png"))]


def figures_of(pdf):
    """What is said of each Figure to those who cannot see it, in reading order."""
    found, stack = [], [pikepdf.open(pdf).Root.StructTreeRoot.K]
    while stack:
        node = stack.pop()
        if isinstance(node, pikepdf.Array):
            stack += reversed(list(node))
        elif isinstance(node, pikepdf.Dictionary):
            if node.get("/S") == "/Figure":
                found.append(str(node.Alt))
            elif "/K" in node:
                stack.append(node.K)
    return found


def apart(a, b):
    """How far two pictures are apart where they are furthest, 0 to 255."""
    if a.size != b.size:
        return 999
    return max(high for _, high in ImageChops.difference(a, b).getextrema())


def on_paper(path):
    """What Pillow sees in a file, upright and on white."""
    image = ImageOps.exif_transpose(Image.open(path))
    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        image = image.convert("RGBA")
        paper = Image.new("RGBA", image.size, (255, 255, 255, 255))
        image = Image.alpha_composite(paper, image)
    return image.convert("RGB")


def small_pictures():
    folder = club("small")
    scene, pictures = make_pictures.scene, folder / "pictures"
    scene("RGB", 120, 80).save(pictures / "colour.png")
    scene("L", 120, 80).save(pictures / "grey.png")
    scene("RGB", 90, 60).quantize(16).save(pictures / "few colours.png")
    clear = scene("RGBA", 90, 60)
    clear.putalpha(scene("L", 90, 60))
    clear.save(pictures / "clear.png")
    (pictures / "photo.jpg").write_bytes(make_pictures.jpeg(scene("RGB", 120, 80)))
    (pictures / "progressive.jpg").write_bytes(make_pictures.jpeg(scene("RGB", 120, 80), progressive=True))
    (pictures / "turned.jpeg").write_bytes(make_pictures.jpeg(scene("RGB", 120, 80), exif=make_pictures.exif_with(6)))
    names = ["colour.png", "grey.png", "few colours.png", "clear.png", "photo.jpg", "progressive.jpg", "turned.jpeg"]
    (folder / "sessions" / "a.md").write_text(
        plan(*(f"![Shape {i}](../pictures/{n.replace(' ', '%20')})" for i, n in enumerate(names)),
             "![Again](../pictures/colour.png)", "![](../pictures/colour.png)"))
    ran, out = build(folder)
    expect(ran.returncode == 0, f"small: {ran.stderr}")
    for kind in ("card", "sheet"):
        pdf = out / f"a-{kind}.pdf"
        rows, images = taken_out(pdf)
        expect(len(images) == len(names) + 2, f"{pdf}: {len(images)} pictures")
        for name, image in zip(names + ["colour.png"] * 2, images):
            # Blending on white is rounded by each program in its own way.
            most = 1 if name == "clear.png" else 0
            far = apart(image, on_paper(pictures / name))
            expect(far <= most, f"{pdf}: {name} is {far} apart from what Pillow reads")
        expect(rows[0][10] == rows[-1][10], f"{pdf}: the same picture stands in it twice")
        expect(all(row[2] == "image" and row[7] == "8" and row[8] == "image" for row in rows), f"{pdf}: {rows}")
        expect(rows[1][5] == "gray" and rows[0][5] == "rgb", f"{pdf}: colours {rows}")
        tags = run("/usr/bin/python3", repository / "tests/support/check_tags.py", pdf)
        expect(tags.returncode == 0, tags.stdout)
        expect(figures_of(pdf) == [f"Shape {i}" for i in range(len(names))] + ["Again", "colour"],
               f"{pdf}: {figures_of(pdf)}")
        # Nothing of a camera's, nothing of this machine's.
        plain = subprocess.run(["qpdf", "--qdf", "--object-streams=disable", pdf, "-"], capture_output=True).stdout
        raw = plain + pdf.read_bytes()
        for secret in (b"SECRET-PLACE", b"Exif", b"GPS", b"Cam", b"photo.jpg", str(work).encode()):
            expect(secret not in raw, f"{pdf}: {secret} is in it")
    first = {p.name: p.read_bytes() for p in sorted(out.glob("*.pdf"))}
    for jobs in ("1", "4"):
        _, again = build(folder, "--jobs", jobs)
        expect({p.name: p.read_bytes() for p in sorted(again.glob("*.pdf"))} == first, f"other bytes with {jobs} workers")


def large_picture():
    folder = club("large")
    image = make_pictures.scene("RGB", 600, 400).resize((6000, 4000), Image.BILINEAR)
    image.save(folder / "pictures" / "large.jpg", quality=85, exif=make_pictures.exif_with(1))
    (folder / "sessions" / "a.md").write_text(plan("![A hall](../pictures/large.jpg)"))
    began = time.monotonic()
    ran, out = build(folder)
    took = time.monotonic() - began
    memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss // 1024
    expect(ran.returncode == 0, f"large: {ran.stderr}")
    expect(took < 30, f"the largest picture takes {took:.1f} s")
    expect(memory < 700, f"the largest picture takes {memory} MB")
    for kind, width in (("card", 148), ("sheet", 210)):
        pdf = out / f"a-{kind}.pdf"
        rows, images = taken_out(pdf)
        dots = (int(rows[0][12]), int(rows[0][13]))
        expect(all(295 <= d <= 302 for d in dots), f"{pdf}: {dots} dots per inch")
        # Another program's average of areas; ours goes by way of what the largest sheet can show.
        far = apart(images[0], on_paper(folder / "pictures" / "large.jpg").resize(images[0].size, Image.BOX))
        expect(far <= 24, f"{pdf}: {far} apart from Pillow's average")
        expect(pdf.stat().st_size < 3_000_000, f"{pdf}: {pdf.stat().st_size} bytes")
        expect(images[0].size[0] <= width / 25.4 * 300 + 1, f"{pdf}: {images[0].size}")
    return took, memory


def drawn_on_the_page():
    """The picture is where its box is, upright, as MuPDF draws the page."""
    folder = club("drawn")
    image = Image.new("RGB", (200, 100), (255, 0, 0))
    image.paste((0, 0, 255), (0, 50, 200, 100))
    image.save(folder / "pictures" / "halves.png")
    (folder / "sessions" / "a.md").write_text(plan("![Red above blue](../pictures/halves.png)"))
    _, out = build(folder, "--paper", "a5")
    run("mutool", "draw", "-q", "-r", "96", "-o", out / "page-%d.png", out / "a-card.pdf")
    page = Image.open(out / "page-1.png").convert("RGB")
    red = page.point(lambda v: v).load()
    reds = [(x, y) for y in range(page.height) for x in range(page.width) if red[x, y] == (255, 0, 0)]
    blues = [(x, y) for y in range(page.height) for x in range(page.width) if red[x, y] == (0, 0, 255)]
    expect(reds and blues, "the picture is not on the page")
    if reds and blues:
        # 200 pixels of 1/96 inch, drawn at 96 dots per inch; MuPDF lays pictures on whole dots.
        wide = max(x for x, _ in reds) - min(x for x, _ in reds) + 1
        expect(198 <= wide <= 202, f"the picture is {wide} dots wide")
        expect(max(y for _, y in reds) < min(y for _, y in blues), "the picture is upside down")
        expect(48 <= max(y for _, y in blues) - min(y for _, y in blues) + 1 <= 52, "the lower half is not 50 dots high")


def refused():
    folder = club("refused")
    secret = work / "outside.png"
    Image.new("L", (5, 5)).save(secret)
    os.symlink(secret, folder / "pictures" / "link.png")
    for target, name in (("../../outside.png", "outside-folder"), (str(secret), "outside-folder"),
                         ("../pictures/link.png", "outside-folder"), ("file://" + str(secret), "unreadable-file"),
                         ("https://example.org/a.png", "unreadable-file"), ("/dev/zero", "outside-folder"),
                         ("../pictures", "unreadable-file"), ("../club.yaml", "unreadable-file")):
        (folder / "sessions" / "a.md").write_text(plan(f"![x]({target})"))
        ran, out = build(folder)
        expect(ran.returncode == 1 and f"[{name}]" in ran.stderr + ran.stdout,
               f"{target}: exit {ran.returncode}: {ran.stdout}{ran.stderr}")
        expect(not list(out.glob("*.pdf")), f"{target}: a sheet was made")


small_pictures()
took, memory = large_picture()
drawn_on_the_page()
refused()
for failure in failures:
    print(failure)
print(f"pictures: 24 megapixels in {took:.1f} s and {memory} MB; {len(failures)} wrong")
sys.exit(1 if failures else 0)
