#!/usr/bin/env python3
"""Clubs made to do harm: what they may not read, write, block or fill.

usage: hostile.py PROGRAM WORK_FOLDER

Each case is a small club folder whose links, repository or text once did what it should not. The program must end
by itself, in bounded time and memory, without touching what lies outside the folder.
"""
import os
import pathlib
import resource
import shutil
import subprocess
import sys
import time

program = os.path.abspath(sys.argv[1])
work = pathlib.Path(sys.argv[2]).resolve()
LONGEST = 60  # seconds for one run, sanitizers included
passed, failures = 0, []


def club(name, body="", sessions=("p",)):
    folder = work / name
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sessions").mkdir(parents=True)
    (folder / "parts").mkdir()
    (folder / "club.yaml").write_text("name: C\n")
    for session in sessions:
        (folder / "sessions" / f"{session}.md").write_text(
            "---\ntitle: T\nplace: gym\n---\n\n## Warm-up\n\n- Jog: 2 min\n\n## Middle\n\n- Squats: 10\n"
            + body + "\n## Cool-down\n\n- Sway: 2 min\n")
    return folder


def run(folder, *options, **how):
    begin = time.monotonic()
    try:
        ran = subprocess.run([program, "build", *options], cwd=folder, capture_output=True, text=True, errors="replace",
                             timeout=LONGEST, **how)
    except subprocess.TimeoutExpired:
        failures.append(f"{folder.name}: still running after {LONGEST} s")
        return -1, ""
    if ran.returncode < 0 or "Sanitizer" in ran.stderr:
        failures.append(f"{folder.name}: ended by signal {-ran.returncode}\n{ran.stderr[:2000]}")
    print(f"{folder.name}: exit {ran.returncode}, {time.monotonic() - begin:.2f} s")
    return ran.returncode, ran.stdout + ran.stderr


def expect(what, true):
    global passed
    if true:
        passed += 1
    else:
        failures.append(what)


def git(folder, *arguments):
    return subprocess.run(["git", "-c", "user.name=a", "-c", "user.email=a@b", *arguments], cwd=folder, check=True,
                          capture_output=True, text=True).stdout.strip()


def outside():
    papers = work / "papers"
    shutil.rmtree(papers, ignore_errors=True)
    papers.mkdir(parents=True)
    for name in ("p-card.pdf", "p-sheet.pdf"):
        (papers / name).write_text("precious")
    folder = club("out-is-a-link")
    (folder / "out").symlink_to(papers)
    code, said = run(folder)
    expect("a linked out/ is refused", code != 0 and "outside-folder" in said)
    expect("nothing behind a linked out/ changes", [p.read_text() for p in sorted(papers.iterdir())] == ["precious"] * 2)
    code, _ = run(folder, "--out", str(folder / "out"))
    expect("a link the user names is followed", code == 0 and (papers / "p-card.pdf").read_bytes().startswith(b"%PDF"))

    secret = work / "secret.yaml"
    secret.write_text("password: hunter2\n")
    folder = club("club-file-is-a-link")
    (folder / "club.yaml").unlink()
    (folder / "club.yaml").symlink_to(secret)
    code, said = run(folder)
    expect("a club.yaml that leads out is not read", code != 0 and "hunter2" not in said)


def repositories():
    folder = club("truncated-object")
    git(folder, "init", "-q")
    git(folder, "add", "-A")
    git(folder, "commit", "-qm", "x")
    head = git(folder, "rev-parse", "HEAD")
    commit = folder / ".git" / "objects" / head[:2] / head[2:]
    commit.chmod(0o644)
    commit.write_bytes(commit.read_bytes()[:50])
    expect("a truncated commit does not hang the build", run(folder)[0] == 0)
    folder = club("pipe-for-a-configuration")
    git(folder, "init", "-q")
    (folder / ".git" / "config").unlink()
    os.mkfifo(folder / ".git" / "config")
    expect("a pipe in .git does not hang the build", run(folder)[0] == 0)


def sizes():
    shapes = {
        "links-times-definitions": "[a]: " + "x" * 131072 + "\n\n" + "[a]" * 43690,
        "lists-above-blank-lines": "- " * 65536 + "a" + "\n" * 131072,
        "html-openings": "a " + "<?" * 100000,
        "headings": "# a\n" * 65536,
        "substitutes": "  - without towel: x: 10\n    - easier: y\n" * 8000,
        "one-word": "  - cue: " + "a\u2060" * 30000,
        "quotes": "> a b\n\n" * 40000,
    }
    for name, body in shapes.items():
        code, said = run(club(name, body))
        expect(f"{name}: refused or warned about, in few words", code in (0, 1) and 0 < len(said) < 200_000)
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"largest child so far: {peak:.0f} MiB")
    expect("memory is bounded", peak < 1500)  # the sanitizers' own needs included


def process():
    folder = club("closed-streams", "- Jump 日 \U0001f938: 10\n", [f"p{i}" for i in range(40)])
    subprocess.run(f"exec '{program}' build --jobs 2 >&- 2>&-", shell=True, cwd=folder, timeout=LONGEST)
    pdfs = list((folder / "out").glob("*.pdf"))
    expect("sheets are made with closed streams", len(pdfs) == 40)
    expect("no message is printed into a PDF", not any(b"missing-glyph" in pdf.read_bytes() for pdf in pdfs))
    folder = club("left-over-temporary-file")
    (folder / "out").mkdir()
    ran = subprocess.run(f": >out/.chalkleaf-$$-0; exec '{program}' build", shell=True, cwd=folder, timeout=LONGEST)
    expect("what an earlier run left does not block this one", ran.returncode == 0)


work.mkdir(parents=True, exist_ok=True)
outside()
repositories()
sizes()
process()
for failure in failures:
    print("FAILED:", failure)
print(f"{passed} passed, {len(failures)} failed")
sys.exit(1 if failures else 0)
