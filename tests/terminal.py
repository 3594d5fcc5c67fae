#!/usr/bin/env python3
"""The program on a terminal, and stopped in the middle.

usage: terminal.py PROGRAM REPOSITORY WORK_FOLDER

A club large enough for a long run is made here. Asked: a line of progress on a terminal, gone at the end; none where
TERM is dumb or standard error is no terminal; after Ctrl-C (SIGINT, as POSIX has it in 11.1.9) no half PDF, no temporary
file, a word on what is missing, and the end by that signal.
"""
import os
import pathlib
import pty
import re
import shutil
import signal
import subprocess
import sys
import time

program = os.path.abspath(sys.argv[1])
repository = pathlib.Path(sys.argv[2]).resolve()
work = pathlib.Path(sys.argv[3]).resolve()
LONG = 1.5  # seconds: three times what a run takes before it shows progress
failures = []


def environment(**more):
    return {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "CHALKLEAF_DATA": str(repository), "NO_COLOR": "1", **more}


def expect(what, holds, seen=""):
    if not holds:
        failures.append(f"{what}\n{seen!r}")


def make_club(count):
    folder = work / "club"
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sessions").mkdir(parents=True)
    (folder / "club.yaml").write_text("name: Alder Quay Gymnastics\n")
    drills = "".join(f"- Walk number {i}: 12 steps\n  - cue: quiet feet\n" for i in range(20))
    for i in range(count):
        (folder / "sessions" / f"{i:05}.md").write_text(
            f"---\ntitle: Session {i}\nplace: gym\n---\n\n## Warm-up\n\n- Jog: 2 min\n\n## Beam\n\n{drills}\n"
            "## Cool-down\n\n- Sway: 1 min\n")
    return folder


def build(club, **options):
    shutil.rmtree(club / "out", ignore_errors=True)
    return subprocess.Popen([program, "build", "--jobs", "2"], cwd=club, **options)


def on_terminal(club, term):
    ours, theirs = pty.openpty()
    child = build(club, env=environment(TERM=term), stdin=theirs, stdout=theirs, stderr=theirs)
    os.close(theirs)
    seen = b""
    while True:
        try:
            some = os.read(ours, 65536)
        except OSError:  # Linux says EIO when the last writer has closed
            break
        if not some:
            break
        seen += some
    os.close(ours)
    expect(f"a build on a terminal ({term}) ends well", child.wait() == 0, seen)
    return seen.decode()


def piped(club):
    child = build(club, env=environment(TERM="xterm"), stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    out, err = child.communicate()
    expect("piped, standard error stays empty", err == b"", err)
    expect("piped, standard output has the summary alone", re.fullmatch(rb"\d+ plans: \d+ PDFs in out\n", out), out)


def stopped(club, how):
    child = build(club, env=environment(TERM="xterm"), stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    while child.poll() is None and not list((club / "out").glob("*.pdf")):
        time.sleep(0.001)
    child.send_signal(how)
    out, err = child.communicate()
    name = how.name
    expect(f"{name}: ended by it", child.returncode == -how, child.returncode)
    expect(f"{name}: says what was not reached",
           re.search(rb"\nStopped: \d+ plans were not reached\. Every file that is there is whole\.\n$", out), out)
    expect(f"{name}: nothing else to say", err == b"", err)
    names = sorted(n for n in os.listdir(club / "out") if n != ".chalkleaf-sheets")  # the list of what was made
    expect(f"{name}: no temporary file", all(n.endswith("-card.pdf") for n in names), names)
    halves = [n for n in names if not (club / "out" / n).read_bytes().rstrip().endswith(b"%%EOF")]
    expect(f"{name}: no half PDF", not halves, halves)
    expect(f"{name}: some PDFs and not all", 0 < len(names) < len(list((club / "sessions").iterdir())), len(names))


def stopped_in_one_plan(how):
    """A plan that takes far longer than a person waits is not waited for: here its pictures, by a program that hangs."""
    club = make_club(1)
    slow = work / "slow"
    shutil.rmtree(slow, ignore_errors=True)
    slow.mkdir()
    (slow / "pdftoppm").write_text("#!/bin/sh\n: >begun\nexec sleep 20\n")
    (slow / "pdftoppm").chmod(0o755)
    (club / "begun").unlink(missing_ok=True)
    child = subprocess.Popen([program, "proof"], cwd=club, env=environment(TERM="xterm", PATH=f"{slow}:{os.environ['PATH']}"),
                             stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    while child.poll() is None and not (club / "begun").exists():
        time.sleep(0.01)
    child.send_signal(how)
    begin = time.monotonic()
    child.wait()
    expect(f"{how.name} in one plan: ended by it", child.returncode == -how, child.returncode)
    expect(f"{how.name} in one plan: soon", time.monotonic() - begin < 8, time.monotonic() - begin)
    err = os.read(child.stderr.fileno(), 65536)  # the program that hangs still holds it open
    expect(f"{how.name} in one plan: said", err.endswith(b"Stopped at once. Every file that is there is whole.\n"), err)
    left = [str(p) for p in club.rglob("*") if p.suffix in (".pdf", ".png")]
    expect(f"{how.name} in one plan: nothing half made", not left, left)


for how in (signal.SIGINT, signal.SIGTERM):
    stopped_in_one_plan(how)
count = 100
while True:
    club = make_club(count)
    begin = time.monotonic()
    piped(club)
    if time.monotonic() - begin > LONG or count > 10000:
        break
    count *= 2
seen = on_terminal(club, "xterm")
lines = re.findall(r"\r(\d+) of (\d+) plans", seen)
expect("progress on a terminal counts up", lines and [int(n) for n, _ in lines] == sorted(int(n) for n, _ in lines), seen)
expect("progress names all plans", {total for _, total in lines} == {str(count)}, lines)
expect("the line is cleared before the summary", re.search(r"plans\r\x1b\[K\d+ plans: \d+ PDFs in out\r\n$", seen), seen)
dumb = on_terminal(club, "dumb")
expect("no progress on a dumb terminal", re.fullmatch(r"\d+ plans: \d+ PDFs in out\r\n", dumb), dumb)
for how in (signal.SIGINT, signal.SIGTERM):
    stopped(club, how)
shutil.rmtree(work)
for failure in failures:
    print(failure)
print(f"{count} plans, {len(lines)} lines of progress, {len(failures)} wrong")
sys.exit(1 if failures else 0)
