#!/usr/bin/env python3
"""Independent programs read back every PDF the program makes.

usage: witness.py PROGRAM REPOSITORY WORK_FOLDER

Builds the demo club, every example, and plans made here (one drill, forty drills, long words, 4 and 24 gymnasts)
on both papers, and asks of each PDF:
  qpdf --check            the file is sound
  pdffonts                every font is embedded, subset, with a way back to Unicode
  pdfinfo                 the page is A4 or A5 (ISO 216, within its 1.5 mm tolerance), tagged, with a title
  pdftotext               every drill of the timetable is there as text, in the plan's order; no word stands on
                          another, none outside the paper
  check_tags.py           marks, structure tree and fonts keep the rules of PDF/UA-1
and of the program: the same bytes from 1 and from N workers, and from a second run.
"""
import hashlib
import os
import pathlib
import re
import shutil
import subprocess
import sys

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
sys.path.insert(0, str(repository / "tests" / "support"))
from verdict import verdict  # noqa: E402
ISO_216 = {"a4": (210.0, 297.0), "a5": (148.0, 210.0)}
failures = []
checked = 0


def run(*command, cwd=None, check=True):
    ran = subprocess.run([str(c) for c in command], cwd=cwd, capture_output=True, text=True, errors="replace")
    if check and ran.returncode != 0:
        failures.append(f"{' '.join(map(str, command))}: exit {ran.returncode}\n{ran.stdout}{ran.stderr}")
    return ran


def squeezed(text):
    """Text as pdftotext and a plan may differ in it: line ends, runs of spaces, soft hyphens, typographer's marks."""
    typed = text.translate(str.maketrans({"\u00ad": None, "’": "'", "‘": "'", "“": '"', "”": '"', "–": "-", "×": "x"}))
    return re.sub(r"\s+", "", typed)


def drills_of(plan):
    """The names of a plan's drills in order, read from `times` and not from the program's model of the page."""
    names = []
    for line in run(program, "times", plan).stdout.splitlines():
        match = re.match(r"\s*\d+:\d\d(?::\d\d)? {4}(\S.*?)(?: {2,}|$)", line)
        if match and "kit is moved" not in line:  # the sheets say in their own words what is fetched
            names.append(match.group(1))
    return names


def check_pdf(pdf, paper, drills):
    global checked
    checked += 1
    run("qpdf", "--check", pdf)
    fonts = run("pdffonts", pdf).stdout.splitlines()[2:]
    if not fonts:
        failures.append(f"{pdf}: no fonts")
    for line in fonts:
        if line.split()[-5:-2] != ["yes", "yes", "yes"]:
            failures.append(f"{pdf}: font not embedded, subset and mapped: {line}")
    info = run("pdfinfo", pdf).stdout
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", info)
    # A poster lies on its side on the larger sheet.
    expected = ISO_216["a4"][::-1] if pdf.stem.endswith("-poster") else ISO_216[paper]
    for points, millimetres in zip(size.groups(), expected):
        if abs(float(points) * 25.4 / 72 - millimetres) > 1.5:
            failures.append(f"{pdf}: {size.group(0)} is not {paper}")
    if not re.search(r"Tagged:\s+yes", info) or not re.search(r"Title:\s+\S", info):
        failures.append(f"{pdf}: not tagged or without title")
    check_words_apart(pdf)
    text = squeezed(run("pdftotext", "-raw", pdf, "-").stdout)
    at = 0
    for drill in drills:
        found = text.find(squeezed(drill), at)
        if found < 0:
            failures.append(f"{pdf}: ‘{drill}’ is not in the text, or not in its place")
        else:
            at = found + 1


def check_words_apart(pdf):
    """The middle halves of all words' boxes, as poppler places them, keep clear of each other and of the paper's edge."""
    page = None
    for line in run("pdftotext", "-bbox", pdf, "-").stdout.splitlines():
        if size := re.search(r'<page width="([\d.]+)" height="([\d.]+)"', line):
            page, words = [float(x) for x in size.groups()], []
        elif word := re.search(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)</word>', line):
            left, top, right, bottom = (float(x) for x in word.groups()[:4])
            if left < 10 or top < 10 or right > page[0] - 10 or bottom > page[1] - 10:
                failures.append(f"{pdf}: ‘{word.group(5)}’ is within 10 pt of the paper's edge")
            quarter = (bottom - top) / 4
            words.append((top + quarter, bottom - quarter, left + 0.5, right - 0.5, word.group(5)))
        elif "</page>" in line:
            words.sort()
            for i, a in enumerate(words):
                for b in words[i + 1:]:
                    if b[0] >= a[1]:
                        break
                    if b[2] < a[3] and a[2] < b[3]:
                        failures.append(f"{pdf}: ‘{a[4]}’ and ‘{b[4]}’ stand on each other")


def bytes_of(folder):
    return {str(p.relative_to(folder)): hashlib.sha256(p.read_bytes()).hexdigest() for p in sorted(folder.rglob("*.pdf"))}


def build(source, name, paper=None, *options):
    out = work / name
    shutil.rmtree(out, ignore_errors=True)
    command = [program, "build", source, "--out", out, *options]
    if paper:
        command += ["--paper", paper]
    run(*command)
    return out


def plan_text(title, place, drills, group=""):
    head = f"---\ntitle: {title}\nplace: {place}\n{group}repeat: Mon, Wed, Fri\n---\n\n"
    safety = "> **Safety.** Clear the floor all round. An adult stays in the room.\n\n"
    body = "## Warm-up\n\n- Jog on the spot: 30 s\n  - cue: quiet feet\n\n## Shapes\n\n"
    for i in range(drills):
        body += f"- Shape number {i + 1}: 2 x {10 + i % 3 * 5} s, rest 10 s\n  - cue: long legs, proud chest\n"
        body += "  - easier: knees bent\n  - harder: arms by the ears\n" if i % 3 else ""
    return head + safety + body + "\n## Cool-down\n\n- Cat stretch: 20 s\n"


def made_plans():
    folder = work / "made"
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sessions").mkdir(parents=True)
    (folder / "club.yaml").write_text(
        "name: Alder Quay Gymnastics\ngroups:\n  Wrens: {ages: 6–8, size: 4}\n  Swifts: {ages: 12–15, size: 24}\n")
    cases = {
        "tiny": plan_text("Two shapes", "home", 0),
        "long": plan_text("A very long session", "home", 40),
        "few": plan_text("Four gymnasts", "gym", 6, "group: Wrens\n"),
        "many": plan_text("Twenty-four gymnasts", "gym", 6, "group: Swifts\n"),
        "words": plan_text("Gleichgewichtsübungsvorbereitungsstunde", "home", 2).replace(
            "proud chest", "Schulterblattstabilisierungsübungen und Handgelenksvorbereitung ½ – ’ ﬁ"),
    }
    for name, text in cases.items():
        (folder / "sessions" / f"{name}.md").write_text(text)
    return folder


def main():
    work.mkdir(parents=True, exist_ok=True)
    club = work / "demo"
    shutil.rmtree(club, ignore_errors=True)
    shutil.copytree(repository / "plans", club, ignore=shutil.ignore_patterns("out", "private"))
    all_pdfs = []
    for source, name in ((club, "demo-out"), (made_plans(), "made-out")):
        plans = {p.stem: p for p in sorted(source.glob("sessions/**/*.md"))}
        for paper in ISO_216:
            out = build(source, f"{name}-{paper}", paper)
            pdfs = sorted(out.rglob("*.pdf"))
            if len(pdfs) < len(plans):
                failures.append(f"{out}: {len(pdfs)} PDFs of {len(plans)} plans")
            for pdf in pdfs:
                name, kind = pdf.stem.rsplit("-", 1)
                # Stations stand in the order of the hall, not of the plan; a poster has none of their drills.
                check_pdf(pdf, paper, drills_of(plans[name]) if kind in ("card", "sheet") else [])
            all_pdfs += pdfs
    examples = [p for p in sorted((repository / "examples").glob("*.md")) if p.name != "README.md"]
    for example in examples:
        out = build(example, f"examples/{example.stem}")
        for pdf in sorted(out.rglob("*.pdf")):
            paper = "a4" if pdf.stem.endswith("-sheet") else "a5"
            check_pdf(pdf, paper, drills_of(example))
            all_pdfs.append(pdf)
    one = bytes_of(build(club, "one-worker", None, "--jobs", "1"))
    for again in ("3", "8"):
        if bytes_of(build(club, "more-workers", None, "--jobs", again)) != one:
            failures.append(f"1 and {again} workers give different bytes")
    if not one:
        failures.append("the demo club gave no PDFs")
    return verdict(all_pdfs, failures, checked)


sys.exit(main())
