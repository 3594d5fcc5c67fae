#!/usr/bin/env python3
"""Nothing good is ever lost, seen from outside: files that may not grow, a full disk, runs that are killed.

usage: never_lost.py PROGRAM REPOSITORY WORK_FOLDER [KILLS]

A full disk is a small tmpfs, where this may mount one; elsewhere that part is left out and says so. Runs are killed
with SIGKILL at moments drawn by a seed. Asked each time: every PDF is the old one or the new one, byte for byte; what
the program says and its exit code; and after the next run all is new and no temporary file is left.
"""
import os
import pathlib
import random
import resource
import shutil
import signal
import subprocess
import sys
import time

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
kills = int(sys.argv[4]) if len(sys.argv) > 4 else 25
LONGEST = 120  # seconds, for one run
PLANS = 60
failures = []
ENVIRONMENT = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "CHALKLEAF_DATA": str(repository),
               "SOURCE_DATE_EPOCH": "1764600000"}


def expect(what, holds, seen=""):
    if not holds:
        failures.append(f"{what}\n{seen}")


def write_club(folder, version):
    (folder / "sessions").mkdir(parents=True, exist_ok=True)
    (folder / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
    drills = "".join(f"- Walk number {i}: 12 steps\n  - cue: quiet feet\n" for i in range(8))
    for i in range(PLANS):
        (folder / "sessions" / f"{i:03}.md").write_text(
            f"---\ntitle: Session {i}, version {version}\nplace: gym\n---\n\n## Warm-up\n\n- Jog: 2 min\n\n## Beam\n\n{drills}\n"
            "## Cool-down\n\n- Sway: 1 min\n")


def run(folder, *arguments, **options):
    return subprocess.run([program, *arguments], cwd=folder, env=ENVIRONMENT, capture_output=True, text=True,
                          timeout=LONGEST, **options)


def pdfs(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*.pdf"))}


def left_overs(folder):
    return [path for path in folder.rglob(".chalkleaf-*") if path.name != ".chalkleaf-sheets"]


def versions(folder):
    """The PDFs of version 1 (which stand there afterwards) and of version 2, whose plans stand there."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    write_club(folder, 2)
    expect("a first build", run(folder, "build").returncode == 0)
    new = pdfs(folder)
    write_club(folder, 1)
    expect("a second build", run(folder, "build").returncode == 0)
    old = pdfs(folder)
    write_club(folder, 2)
    expect("two versions differ", len(old) == PLANS and all(old[name] != new[name] for name in old))
    return old, new


def old_or_new(what, folder, old, new):
    now = pdfs(folder)
    expect(f"{what}: all PDFs are there", sorted(now) == sorted(old), sorted(set(old) ^ set(now)))
    bad = [name for name in now if now[name] not in (old.get(name), new.get(name))]
    expect(f"{what}: each is the old one or the new one", not bad, bad)
    return sum(now[name] == new[name] for name in now)


def heals(what, folder, new):
    again = run(folder, "build")
    expect(f"{what}: the next build is well", again.returncode == 0, again.stderr)
    expect(f"{what}: and makes all of them new", pdfs(folder) == new)
    expect(f"{what}: no temporary file is left", not left_overs(folder), left_overs(folder))


def too_large():
    folder = work / "too-large"
    old, new = versions(folder)
    limit = 1024
    ran = run(folder, "build", preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)))
    expect("too large: exit code 2", ran.returncode == 2, ran.returncode)
    expect("too large: says so", "files as large as it may not be written here" in ran.stderr, ran.stderr[:500])
    expect("too large: names what is old", "are not from this version" in ran.stdout, ran.stdout)
    expect("too large: nothing is new", old_or_new("too large", folder, old, new) == 0)
    expect("too large: no temporary file", not left_overs(folder))
    heals("too large", folder, new)


def full_disk():
    folder = work / "full-disk"
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", str(folder)], capture_output=True)
    if mounted.returncode != 0:
        return print("full disk: left out, since no small disk can be mounted here")
    try:
        club = folder / "club"
        old, new = versions(club)
        filler = folder / "filler"
        with open(filler, "wb", buffering=0) as file:
            for size in (1 << 20, 1 << 12):
                try:
                    while True:
                        file.write(b"x" * size)
                except OSError:
                    pass
            file.truncate(max(0, file.tell() - (64 << 10)))
        ran = run(club, "build")
        expect("full disk: exit code 2", ran.returncode == 2, ran.returncode)
        expect("full disk: says so", "could not be written: the disk is full" in ran.stderr, ran.stderr[:500])
        expect("full disk: names what is old", "not from this version" in ran.stdout, ran.stdout)
        made = old_or_new("full disk", club, old, new)
        expect("full disk: no temporary file", not left_overs(club), left_overs(club))
        filler.unlink()
        heals("full disk", club, new)
        print(f"full disk: {made} of {PLANS} PDFs were new, and none was lost")
    finally:
        subprocess.run(["umount", str(folder)], check=True)


def killed():
    folder = work / "killed"
    old, new = versions(folder)
    begin = time.monotonic()
    expect("an undisturbed build", run(folder, "build", "--jobs", "2").returncode == 0)
    whole = time.monotonic() - begin
    rng = random.Random(20261130)
    cut_short, news, lefts = 0, 0, 0
    for i in range(kills):
        for name, data in old.items():
            (folder / name).write_bytes(data)
        child = subprocess.Popen([program, "build", "--jobs", "2"], cwd=folder, env=ENVIRONMENT,
                                 stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(rng.uniform(0.05, 0.8) * whole)
        child.send_signal(signal.SIGKILL)
        cut_short += child.wait() == -signal.SIGKILL
        lefts += len(left_overs(folder))
        news += old_or_new(f"kill {i}", folder, old, new)
        heals(f"kill {i}", folder, new)
    expect("killed: a quarter of the runs or more were cut short", cut_short * 4 >= kills, cut_short)
    print(f"{cut_short} of {kills} runs were cut short; {news} of {kills * PLANS} PDFs were new by then, the others "
          f"old; {lefts} temporary files were left and cleared")


work.mkdir(parents=True, exist_ok=True)
too_large()
full_disk()
killed()
shutil.rmtree(work)
for failure in failures:
    print(failure)
print(f"{len(failures)} wrong")
sys.exit(1 if failures else 0)
