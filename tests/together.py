#!/usr/bin/python3
"""Papers, two-up, the week and the booklet from outside: other programs read back what is made.

usage: together.py PROGRAM REPOSITORY WORK_FOLDER

Builds the demo club on each paper, two-up and as copies, its week and a booklet of it. qpdf and check_tags.py find the files
sound, pdfinfo gives the paper's size (ISO 216 within its 1.5 mm; ANSI/ASME Y14.1 in inches, exactly), and poppler finds on each
half of a booklet's sheets the text of the page that the trade's order puts there. pikepdf walks the structure tree: its marks
come in the order of the booklet's pages, not of its sheets.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys

import pikepdf
from PIL import Image

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
sys.path.insert(0, str(repository / "tests" / "support"))
from verdict import verdict  # noqa: E402
MILLIMETRES = {"a4": (210, 297), "a5": (148, 210), "letter": (8.5 * 25.4, 11 * 25.4), "half-letter": (5.5 * 25.4, 8.5 * 25.4)}
failures, checked, pdfs = [], 0, []


def check(right, what):
    global checked
    checked += 1
    if not right:
        failures.append(what)


def run(*words, code=0):
    ran = subprocess.run([str(word) for word in words], cwd=work, capture_output=True, text=True)
    check(ran.returncode == code, f"{' '.join(map(str, words))}: exit {ran.returncode}\n{ran.stdout}{ran.stderr}")
    return ran


def size_of(paper):
    wide = paper.endswith("-landscape")
    size = MILLIMETRES[paper.removesuffix("-landscape")]
    return size[::-1] if wide else size


def sound(pdf, paper, pages=None):
    pdfs.append(pdf)
    run("qpdf", "--check", pdf)
    info = run("pdfinfo", "-f", 1, "-l", -1, pdf).stdout
    sizes = re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+) pts", info)
    tolerance = 0.01 if "letter" in paper else 1.5
    for size in sizes:
        for points, wanted in zip(size, size_of(paper)):
            check(abs(float(points) * 25.4 / 72 - wanted) <= tolerance, f"{pdf}: {size} is not {paper}")
    check(sizes and pages in (None, len(sizes)), f"{pdf}: {len(sizes)} pages, not {pages}")
    check(re.search(r"Tagged: +yes", info), f"{pdf}: not tagged")
    return len(sizes)


def words_of(pdf, side, half, paper):
    """The words on the left (0) or right (1) half of a side of a sheet, as poppler finds them."""
    width, height = (n * 72 / 25.4 for n in size_of(paper))
    x = round(half * width / 2)
    return run("pdftotext", "-raw", "-f", side + 1, "-l", side + 1, "-x", x, "-y", 0, "-W", round(width / 2), "-H", round(height),
               pdf, "-").stdout


def marks_in_reading_order(pdf):
    """(page of the sheet, number of the mark) of every mark, walking the structure tree."""
    with pikepdf.open(pdf) as document:
        number = {page.objgen: i for i, page in enumerate(document.pages)}
        out = []

        def walk(node, page):
            if isinstance(node, pikepdf.Array):
                for kid in node:
                    walk(kid, page)
            elif isinstance(node, pikepdf.Dictionary):
                page = node.get("/Pg", page)
                if "/MCID" in node:
                    out.append((number[page.objgen], int(node.MCID)))
                elif "/K" in node:
                    walk(node.K, page)
            else:
                out.append((number[page.objgen], int(node)))

        walk(document.Root.StructTreeRoot.K, None)
        return out


def some(club, *names):
    return [club / "sessions" / (name + ".md") for name in names]


def papers(club):
    # A gym and a home plan: all plans on both usual papers are witness.py's.
    few = some(club, "kestrels-floor-and-beam", "kestrels-home-quick-shapes")
    for paper in [name + turn for name in MILLIMETRES for turn in ("", "-landscape")]:
        run(program, "build", *few, "--paper", paper, "--out", work / "papers" / paper)
        made = sorted((work / "papers" / paper).rglob("*.pdf"))
        check(made, f"{paper}: no PDFs")
        for pdf in made:
            sound(pdf, paper)
    run(program, "build", club, "--paper", "US Letter", "--only", "cards", "--out", "us")
    check(sorted((work / "us").rglob("*.pdf")), "‘US Letter’ gave no cards")
    said = run(program, "build", club, "--paper", "foolscap", code=2).stderr
    check("half-letter" in said, f"another paper is not refused with a list: {said}")


def two_up(club):
    # Cards of one page, of three and of six or so: the last sheet is half empty, or not.
    tiny = club / "sessions" / "tiny.md"
    tiny.write_text("---\ntitle: Two shapes\nplace: gym\n---\n\n## Warm-up\n\n- Easy run: 2 min\n\n## Cool-down\n\n- Slow walk: 1 min\n")
    few = [tiny, *some(club, "wrens-rolls-and-jumps", "swifts-bars-and-core")]
    for paper, sheet in (("a5", "a4-landscape"), ("half-letter", "letter-landscape"), ("a5-landscape", "a4")):
        one = work / "one" / paper
        run(program, "build", *few, "--only", "cards", "--paper", paper, "--out", one)
        for name, options in (("pages", []), ("copies", ["--copies", "2"])):
            out = work / name / paper
            run(program, "build", *few, "--only", "cards", "--paper", paper, "--two-up", *options, "--out", out)
            made = sorted(out.rglob("*.pdf"))
            check(len(made) == len(few), f"{out}: {len(made)} PDFs")
            for pdf in made:
                pages = len(pikepdf.open(one / pdf.relative_to(out)).pages)
                wanted = pages if name == "copies" else (pages + 1) // 2
                sound(pdf, sheet, wanted)
                if sheet.endswith("landscape") and (name == "copies" or pages == 1):
                    left, right = words_of(pdf, 0, 0, sheet), words_of(pdf, 0, 1, sheet)
                    check(left.split() == right.split() and left.strip(), f"{pdf}: the copies differ")
    for wrong in (["--two-up", "--paper", "a4"], ["--copies", "2"]):
        run(program, "build", *few, *wrong, code=2)
    tiny.unlink()


def ink(club):
    """The ink-saver takes less of it: what poppler's grey pixels hold, of the same plans in both looks."""
    plans, taken = some(club, "kestrels-bar-shapes", "wrens-home-animal-moves"), {}
    for look in ("classic", "ink-saver"):
        run(program, "build", *plans, "--look", look, "--out", look)
        taken[look] = 0
        for number, pdf in enumerate(sorted((work / look).rglob("*.pdf"))):
            run("pdftoppm", "-r", 60, "-gray", "-png", pdf, work / look / str(number))
        for picture in (work / look).glob("*.png"):
            taken[look] += sum((255 - grey) * count for grey, count in enumerate(Image.open(picture).convert("L").histogram()))
    share = taken["ink-saver"] / taken["classic"]
    # Of a sheet without frames most of the ink is text, which both have.
    check(0.3 < share < 0.8, f"the ink-saver takes {share:.2f} of the ink")


def week(club):
    run(program, "week", club, "--out", "week.pdf")
    sound(work / "week.pdf", "a4-landscape", 3)
    text = run("pdftotext", "-layout", "week.pdf", "-").stdout
    check(all(name in text for name in ("Wrens", "Kestrels", "Swifts")), "the week lacks a group")
    check("17:00–18:15" in text and "Kit for the week" in text, "the week lacks a time, or its kit")
    again = (work / "week.pdf").read_bytes()
    run(program, "week", club, "--out", "week.pdf")
    check((work / "week.pdf").read_bytes() == again, "the same week twice gives other bytes")
    run(program, "week", club, "--group", "kestrels", "--starting", "2026-12-21", "--paper", "letter", "--out", "k.pdf")
    sound(work / "k.pdf", "letter", 1)
    check("No sessions in the gym" in run("pdftotext", "k.pdf", "-").stdout, "a week without the gym does not say so")
    check("there are: Kestrels, Swifts" in run(program, "week", club, "--group", "Larks", code=2).stderr, "no list of groups")
    check("nothing is on" in run(program, "week", club, "--starting", "2020-01-06", code=2).stderr, "an empty week is made")
    run(program, "week", club, "--starting", "soon", code=2)


def booklet(club):
    plans = some(club, "kestrels-bar-shapes", "kestrels-floor-and-beam", "kestrels-vault-and-landings")
    said = run(program, "booklet", *plans, "--out", "booklet.pdf").stdout
    pages = int(re.search(r"(\d+) pages? on (\d+) sheet", said).group(1))
    sheets = (pages + 3) // 4
    pdf = work / "booklet.pdf"
    sound(pdf, "a4-landscape", sheets * 2)
    # The trade's order: on every side the numbers of two neighbours add up to one more than all pages.
    whole, side_of = sheets * 4, {}
    for side in range(sheets * 2):
        low = side + 1
        left, right = (whole + 1 - low, low) if side % 2 == 0 else (low, whole + 1 - low)
        for half, page in ((0, left), (1, right)):
            text = words_of(pdf, side, half, "a4-landscape")
            if page > pages:
                check(not text.strip(), f"blank page {page} has text: {text}")
            else:
                side_of[page] = side
                check(re.search(rf"\b{page} of {pages}\b", text), f"side {side + 1}, half {half + 1}: not page {page} of {pages}")
    cover = words_of(pdf, 0, 1, "a4-landscape")
    check("Alder Quay Gymnastics" in cover and "In this booklet" in cover, f"the cover is not on the front: {cover}")
    order = [side for side, _ in marks_in_reading_order(pdf)]
    turns = [side for i, side in enumerate(order) if i == 0 or side != order[i - 1]]
    read = [side_of[page] for page in range(1, pages + 1)]
    read = [side for i, side in enumerate(read) if i == 0 or side != read[i - 1]]
    check(turns == read, f"the tree reads the sides {turns}, the pages lie on {read}")
    run(program, "booklet", club, "--group", "Kestrels", "--starting", "2026-11-30", "--paper", "half-letter", "--out", "all.pdf")
    sound(work / "all.pdf", "letter-landscape")
    run(program, "booklet", *plans, "--paper", "a4", code=2)
    broken = work / "broken.md"
    broken.write_text("---\ntitle: Broken\nplace: gym\n---\n\n## Warm-up\n\n- Run: 2 mni\n")
    run(program, "booklet", broken, "--out", "broken.pdf", code=1)
    check(not (work / "broken.pdf").exists(), "a plan with errors is in a booklet")


def slips(club):
    plan = (club / "sessions" / "kestrels-home-strong-shapes.md").read_text()
    path = club / "sessions" / "slip.md"
    path.write_text(plan.replace("place: home", "place: home\nreturn-slip: by Friday 4 December\nfiling-margin: both sides", 1))
    run(program, "build", path, "--out", "slip")
    for pdf in sorted((work / "slip").rglob("*.pdf")):
        sound(pdf, "a4" if "sheet" in pdf.stem else "a5")
    text = run("pdftotext", next((work / "slip").rglob("*-sheet.pdf")), "-").stdout
    check("by Friday 4 December" in text and "cut here" in text, "there is no slip")
    path.unlink()


def main():
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    club = work / "club"
    shutil.copytree(repository / "plans", club, ignore=shutil.ignore_patterns("out", "private"))
    for part in (two_up, ink, week, booklet, slips, papers):
        part(club)
    return verdict(pdfs, failures, checked)


sys.exit(main())
