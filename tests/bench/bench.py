#!/usr/bin/env python3
"""Measures the program on synthetic clubs: medians and ratios, whole processes, the system's own accounting.

usage: bench.py PROGRAM REPOSITORY WORK_FOLDER [--full] [--demo] [--against OTHER_PROGRAM]

The demo club: the start of the program, one plan of it, a plan without a club, a page of the whole club, as
processor time of the whole process and page faults. With --against the two programs take turns, and the ratio is
the median of the pairs'. --demo measures nothing else.

Clubs of 1, 100 and (with --full) 10,000 plans are made from a seed: the same clubs on every machine. Reported:
whole process for one home plan (both PDFs), PDFs a second with 1 and 2 workers, peak memory, and, from
bench_passes, the time of each pass. PDFs have two pages as a rule; the number of pages is counted, not assumed.
"""
import os
import pathlib
import random
import re
import shutil
import statistics
import subprocess
import sys
import time

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
full = "--full" in sys.argv
against = os.path.abspath(sys.argv[sys.argv.index("--against") + 1]) if "--against" in sys.argv else None

NAMES = ["Dish hold", "Arch hold", "Front support", "Line walk", "Tuck jump", "Slow lowers", "Leg lifts", "Cat stretch",
         "Half turn", "Stork balance", "Bear crawl", "Straddle sit", "Shoulder shrugs", "Rocking dish", "Long jump"]
CUES = ["lower back pressed into the floor", "eyes at the end of the line", "quiet feet", "long legs, proud chest",
        "push the floor away", "toes to the wall behind", "grow tall before you turn", "land like a feather"]
EASIER = ["knees bent", "hands on the hips", "one foot on the floor", "on the flat foot", "walk it first"]
HARDER = ["arms by the ears", "on tiptoe", "pause half-way", "eyes closed", "without lowering the heels"]


def plan(rng, number):
    """A home plan of 14 to 18 drills: a card of one or two A5 pages and a home sheet of three or four A4 pages."""
    lines = ["---", f"title: Practice number {number}", "place: home", "group: Kestrels", "repeat: Mon, Wed, Fri",
             "equipment:", "  towel: a bath towel, rolled lengthways", "---", "",
             "> **Safety.** Clear two big steps of floor all round. An adult stays in the room.", "", "## Warm-up", "",
             "[The warm-up](../parts/warm-up.md)", "", "## Shapes", ""]
    for _ in range(rng.randint(8, 12)):
        dose = rng.choice(["2 x 20 s, rest 20 s", "3 x 8", "12 steps each way: forwards, backwards", "2 x 10 each leg",
                           "max hold, up to 15 s, 3 goes"])
        lines += [f"- {rng.choice(NAMES)}: {dose}", f"  - cue: {rng.choice(CUES)}", f"  - easier: {rng.choice(EASIER)}"]
        if rng.random() < 0.7:
            lines.append(f"  - harder: {rng.choice(HARDER)}")
        if rng.random() < 0.15:
            lines += [f"  - without towel: {rng.choice(NAMES)}: 2 x 10", f"    - easier: {rng.choice(EASIER)}"]
    return "\n".join(lines + ["", "## Cool-down", "", "[The cool-down](../parts/cool-down.md)", ""])


def make_club(count):
    folder = work / f"club-{count}"
    if (folder / "done").exists():
        return folder
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sessions").mkdir(parents=True)
    (folder / "parts").mkdir()
    (folder / "club.yaml").write_text(
        "name: Alder Quay Gymnastics\ngroups:\n  Kestrels: {ages: 9–11, size: 8}\n")
    (folder / "parts" / "warm-up.md").write_text(
        "- Jog on the spot: 45 s\n  - easier: march\n- Arm circles: 10 each way\n  - easier: smaller\n"
        "- Knee lifts: 20\n  - easier: slower\n")
    (folder / "parts" / "cool-down.md").write_text(
        "- Cat stretch: 20 s\n  - easier: smaller\n- Butterfly stretch: 2 x 20 s\n  - easier: sit on a cushion\n")
    rng = random.Random(20261125)
    for i in range(count):
        (folder / "sessions" / f"plan-{i:05}.md").write_text(plan(rng, i))
    (folder / "done").write_text("")
    return folder


def once(*arguments):
    """Wall seconds and peak KiB of one whole process."""
    begin = time.perf_counter()
    child = subprocess.Popen([program, *map(str, arguments)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    wall = time.perf_counter() - begin
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode != 0:
        sys.exit(f"{program} {arguments}: exit {child.returncode}")
    return wall, usage.ru_maxrss


def measure(runs, *arguments):
    once(*arguments)
    results = [once(*arguments) for _ in range(runs)]
    walls = sorted(w for w, _ in results)
    return walls[0], statistics.median(walls), max(m for _, m in results)


def pages(folder):
    count = 0
    for pdf in folder.rglob("*.pdf"):
        count += len(re.findall(rb"/Type /Page\b(?!s)", pdf.read_bytes()))
    return count


def processor(which, arguments):
    """Processor milliseconds of one whole process, its children's too, and its page faults."""
    child = subprocess.Popen([which, *map(str, arguments)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode != 0:
        sys.exit(f"{which} {arguments}: exit {child.returncode}")
    return (usage.ru_utime + usage.ru_stime) * 1000, usage.ru_minflt


def demo():
    club = work / "demo"
    shutil.rmtree(club, ignore_errors=True)
    shutil.copytree(repository / "plans", club, ignore=shutil.ignore_patterns("out"))
    subprocess.run(["git", "init", "-q"], cwd=club, check=True)
    subprocess.run(["git", "add", "-A"], cwd=club, check=True)
    subprocess.run(["git", "-c", "user.name=a", "-c", "user.email=a@b", "commit", "-qm", "x"], cwd=club, check=True)
    plan = club / "sessions" / "kestrels-home-strong-shapes.md"
    alone = work / "alone" / plan.name
    alone.parent.mkdir(exist_ok=True)
    alone.write_text("---\ntitle: Alone\nplace: home\n---\n\n> An adult stays in the room. Clear two big steps of floor.\n\n## Warm-up\n\n- March: 2 min\n\n"
                     "## Shapes\n\n- Dish hold: 3 x 20 s\n- Arch hold: 3 x 20 s\n\n## Cool-down\n\n- Cat stretch: 30 s\n")
    out = work / "out-demo"
    cases = [("--help", ["--help"], 41), ("check of one plan", ["check", plan], 21),
             ("one plan, both PDFs", ["build", plan, "--out", out], 21),
             ("a plan without a club", ["build", alone, "--out", work / "out-alone"], 21),
             ("the whole club, one worker", ["build", club, "--out", out, "--jobs", "1"], 7)]
    for name, arguments, runs in cases:
        programs = [program] + ([against] if against else [])
        for which in programs:
            processor(which, arguments)
        pairs = [[processor(which, arguments) for which in programs] for _ in range(runs)]
        told = []
        for i in range(len(programs)):
            told.append(f"{statistics.median(p[i][0] for p in pairs):7.1f} ms, "
                        f"{statistics.median(p[i][1] for p in pairs):6.0f} faults")
        ratio = f"  ratio {statistics.median(p[1][0] / p[0][0] for p in pairs):.2f}" if against else ""
        print(f"{name:28} {'  against '.join(told)}{ratio}")
    print(f"the whole club has {pages(out)} pages")


def main():
    work.mkdir(parents=True, exist_ok=True)
    demo()
    if "--demo" in sys.argv:
        return
    one = make_club(1)
    low, median, memory = measure(21, "build", one / "sessions" / "plan-00000.md", "--out", work / "out-1", "--jobs", "1")
    print(f"one plan, both PDFs, whole process: median {median * 1000:.1f} ms, least {low * 1000:.1f} ms, "
          f"{memory / 1024:.1f} MiB")
    low, median, memory = measure(11, "check", one)
    print(f"check of one plan, whole process:   median {median * 1000:.1f} ms, {memory / 1024:.1f} MiB")
    for count in (100, 10000) if full else (100,):
        club = make_club(count)
        walls = {}
        for jobs in (1, 2):
            out = work / f"out-{count}"
            shutil.rmtree(out, ignore_errors=True)
            low, median, memory = measure(5 if count <= 100 else 1, "build", club, "--out", out, "--jobs", jobs)
            walls[jobs] = median
            pdfs = sum(1 for _ in out.rglob("*.pdf"))
            if jobs == 1:
                print(f"club of {count}: {pdfs} PDFs, {pages(out)} pages")
            print(f"  {jobs} worker{'s' if jobs > 1 else ' '}: {pdfs / median:6.0f} PDFs a second, "
                  f"{memory / 1024:.1f} MiB")
        print(f"  two workers over one: {walls[1] / walls[2]:.2f} times as fast")


main()
