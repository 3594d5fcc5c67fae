#!/usr/bin/env python3
"""Clubs made to do harm: what they may not read, write, block or fill.

usage: hostile.py PROGRAM WORK_FOLDER

Each case is a small club folder whose links, repository or text once did what it should not. The program must end
by itself, in bounded time and memory, without touching what lies outside the folder.
"""
import os
import pathlib
import re
import resource
import shutil
import struct
import subprocess
import sys
import time
import zlib

program = os.path.abspath(sys.argv[1])
work = pathlib.Path(sys.argv[2]).resolve()
LONGEST = 60  # seconds for one run, sanitizers included
passed, failures = 0, []


def under_sanitizer():
    return b"__asan_init" in pathlib.Path(program).read_bytes() or b"__tsan_init" in pathlib.Path(program).read_bytes()


# Under a sanitizer, where each byte costs ten times as much, files are smaller: what is asked there is whether memory is
# touched that should not be, and the plain build has asked what it takes.
LESS = 6 if under_sanitizer() else 1


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


def names():
    """A plan's name makes no sheet outside out/, and no name reaches a terminal as it is."""
    folder = club("strange-names")
    beside = folder / "sessions" / "-card.pdf"
    for path in (beside, folder / "-card.pdf", folder.parent / "strange-names-card.pdf", folder / "out-card.pdf"):
        path.write_text("precious")
    strange = ["...md", "..md", "-.md", "\x1b[2J\x07.md", "\u202egnp.md", "\udc9b31m.md", "a\nb.md"]
    for name in strange:
        shutil.copy(folder / "sessions" / "p.md", folder / "sessions" / name)
    for name in strange:
        code, said = run(folder, f"sessions/{name}")
        expect(f"{name!r}: printed into out/", code == 0)
        expect(f"{name!r}: nothing raw is said", raw(said) is None)
    kept = [p for p in work.rglob("*-card.pdf") if p.is_file() and p.read_bytes() == b"precious"]
    expect("nothing outside out/ was touched", len(kept) == 4)
    made = [p for p in folder.rglob("*.pdf") if p.read_bytes() != b"precious"]
    expect("all PDFs are in out/", made and all(p.parent == folder / "out" for p in made))
    expect("their names are plain", not any(raw(p.name) or p.name.startswith((".", "-")) for p in made))

    strange = "\x1b]0;t\x07\x9b31m\u202e\u2066\x85\n\r"
    commands = [[c, strange] for c in ("build", "check", "proof", "times", "loads", "clashes", "week", "booklet", "explain", "figure", "looks",
                                       "figures", strange)]
    commands += [["build", option, strange] for option in ("--only", "--paper", "--look", "--jobs", "--messages", strange)]
    commands += [["figure", "dish", "--age", strange], ["figure", "dish", strange], ["week", "--group", strange],
                 ["week", "--starting", strange], ["begin", strange + "/../p" + strange], ["begin", "sessions"],
                 ["check", "--messages", "json", strange], ["check", "--messages", "short", strange]]
    (folder / "sessions" / "p.md").write_text(f"---\ntitle: {strange!a}\n{strange[:2]}: x\n---\n## {strange}\n- {strange}: x {strange}\n")
    for command in commands + [["check", "sessions/p.md"], ["times", "sessions/p.md"], ["loads", "sessions/p.md"]]:
        ran = subprocess.run([program, *command], cwd=folder, capture_output=True, timeout=LONGEST)
        said = (ran.stdout + ran.stderr).decode(errors="surrogateescape")
        expect(f"{command!r}: says something, nothing raw: {said!r}", said and raw(said) is None)


def raw(said):
    """The first character a terminal may obey, if there is one."""
    return re.search("[\x00-\x09\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\udc80-\udcff]", said)


def loose_links():
    folder = work / "loose-links"
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir()
    away = work / "elsewhere.md"
    away.write_text("---\ntitle: Secret\nplace: hunter2\n---\n")
    (folder / "a.md").symlink_to(away)
    ran = subprocess.run([program, "build", "."], cwd=folder, capture_output=True, text=True, timeout=LONGEST)
    said = ran.stdout + ran.stderr
    expect("a link out of a loose folder is not followed", "[outside-folder]" in said and "hunter2" not in said)


def costly():
    """What once took a parser minutes is refused in a blink, with its place."""
    shapes = {
        "image-openings": "![[]()" * 80_000,
        "openers-then-closers": "*a " * 80_000 + "_a*_ " * 50_000,
        "crossed-emphasis": "*a**b_ " * 70_000,
        "emphasis-before-links": "a *b* [b](c) d " * 30_000,
        "rules-of-tables": "a|b\n|-|-|-|\n" * 30_000,
        "numbers-in-numbers": "1. " * 60_000 + "a" + "\n" * 131_072,
    }
    for name, body in shapes.items():
        folder = club(name, body)
        begin = sum(resource.getrusage(resource.RUSAGE_CHILDREN)[:2])
        code, said = run(folder)
        took = sum(resource.getrusage(resource.RUSAGE_CHILDREN)[:2]) - begin
        expect(f"{name}: refused with its place", code == 1 and re.search(r"sessions/p\.md:\d\d+:\d+: error: this file cannot", said))
        expect(f"{name}: in 2 s of CPU, not {took:.1f}", took < 2)


def memory():
    """The largest plans take turns: several workers need no more than one."""
    line = "- Walk: 12 steps\n  - cue: up\n"
    body = line * (500_000 // len(line))
    peaks = []
    for jobs in ("1", "3"):
        folder = club(f"large-plans-{jobs}", body, [f"p{i}" for i in range(3)])
        child = subprocess.Popen([program, "check", "--jobs", jobs], cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        _, _, usage = os.wait4(child.pid, 0)
        child.returncode = 0
        peaks.append(usage.ru_maxrss / 1024)
    print(f"three large plans: {peaks[0]:.0f} MiB with one worker, {peaks[1]:.0f} MiB with three")
    expect("three workers need not much more memory than one", peaks[1] < 1.6 * peaks[0])
    for name, body in {"short-lines": "a\n" * 250_000, "short-paragraphs": "a\n\n" * 160_000, "short-entries": "- a\n" * 125_000}.items():
        code, said = run(club(name, body))
        expect(f"{name}: refused, with what to do", code == 1 and "it has more than 36000 lines" in said)


def quotes():
    """A message that quotes the coach's text is no longer than a page."""
    long = "word " * (90_000 // LESS)
    for name, body in {
        "a-long-dose": f"- Jump: {long}\n", "a-long-name": f"- {long}: 10\n", "a-long-key": f"- Jump: 10\n  - {long}: x\n",
        "a-long-heading": f"## {long} (x min)\n", "a-long-link": f"[{long}](../parts/{long.replace(' ', '-')}.md)\n",
        "a-long-value": f"- Jump: 10\n  - at: {long}\n", "many-mistakes": "- Jump: x y z\n  - tempo: q\n  - hm: x\n" * (9_000 // LESS),
    }.items():
        code, said = run(club(name, body))
        expect(f"{name}: in few words, not {len(said)}", code in (0, 1) and 0 < len(said) < 150_000)
        expect(f"{name}: in short lines", max(len(line) for line in said.splitlines()) < 2_500)


def long_lists():
    """Lists of thousands in club.yaml cost no seconds."""
    for name in ("hall", "kit", "groups", "words", "staff", "contacts", "checks"):
        folder = club(f"long-{name}")
        (folder / "club.yaml").write_text(f"name: C\n{name}:\n" + "".join(f"  g{i}:\n" for i in range(25_000)))
        begin = sum(resource.getrusage(resource.RUSAGE_CHILDREN)[:2])
        code, said = run(folder)
        took = sum(resource.getrusage(resource.RUSAGE_CHILDREN)[:2]) - begin
        expect(f"{name} of 25,000: in few words", code == 1 and len(said) < 150_000)
        expect(f"{name} of 25,000: in 2 s of CPU, not {took:.1f}", took < 2)


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
    begin = time.monotonic()
    code, said = run(folder)
    expect("a pipe in .git does not hang the build", code == 0 and time.monotonic() - begin < 5)
    expect("what needs no configuration is not given up", "git repository" not in said)


def sizes():
    shapes = {
        "links-times-definitions": "[a]: " + "x" * 131072 + "\n\n" + "[a]" * 43690,
        "lists-above-blank-lines": "- " * 65536 + "a" + "\n" * 131072,
        "html-openings": "a " + "<?" * 100000,
        "headings": "# a\n" * 65536,
        "substitutes": "  - without towel: x: 10\n    - easier: y\n" * 8000,
        "one-word": "  - cue: " + "a\u2060" * 30000,
        "stations": "- Circuit: 3 rounds, 30 s work\n" + "  - A jump\n" * 30000,
        "moves": "- Mix: " + ", ".join(f"{i} jumps" for i in range(1, 90)) + "\n" + "- M: 10 a, 10 b\n" * 9000,
        "choices": "- " + " or ".join(["a jump"] * 20000) + ": 3 goes\n",
        "kit-moves": "- Pick up: " + ", ".join(["hoops"] * 20000) + "\n",
        "table": "| a |\n|---|\n" + "| b |\n" * 30000,
        "wide-table": "|" + " a |" * 3000 + "\n|" + "---|" * 3000 + "\n" + "| b |\n" * 100,
        "emphasis": "Some " + "**a** *b* " * 20000 + "\n",
        "quotes": "> a b\n\n" * 40000,
    }
    for name, body in shapes.items():
        code, said = run(club(name, body[:len(body) // LESS]))
        expect(f"{name}: refused or warned about, in few words", code in (0, 1) and 0 < len(said) < 200_000)
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    print(f"largest child so far: {peak:.0f} MiB")
    expect("memory is bounded", peak < 1500)  # the sanitizers' own needs included


def club_files():
    """What stands in club.yaml and the drill library costs no more than a plan does."""
    bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(
        f"{chr(98 + i)}: &{chr(98 + i)} [*{chr(97 + i)}, *{chr(97 + i)}, *{chr(97 + i)}, *{chr(97 + i)}, *{chr(97 + i)}]\n"
        for i in range(20))
    texts = {
        "yaml-bomb": bomb,
        "yaml-deep-flow": "groups: " + "[" * 100_000,
        "yaml-deep-maps": "groups: " + "{a: " * 50_000,
        "yaml-deep-blocks": "".join(" " * i + f"k{i}:\n" for i in range(700)),
        "yaml-many-keys": "groups:\n" + "".join(f"  G{i}: {{ages: 6-8}}\n" for i in range(20_000)),
        "yaml-same-key": "name: C\n" * 50_000,
        "yaml-long-scalar": "name: " + "x" * 500_000,
        "yaml-merge": "groups: {<<: {a: b}, <<: {c: d}}\n",
        "yaml-words": "name: C\nwords:\n" + "".join(f"  word{i}: x\n" for i in range(20_000)),
        "yaml-stations": "name: C\nhall:\n" + "".join(f"  s{i}: {{takes: 1}}\n" for i in range(20_000)),
    }
    for name, text in texts.items():
        folder = club(name, "- A jump: 10\n  - at: s1\n  - uses: hoop\n" * 300)
        (folder / "club.yaml").write_text(text if name.startswith("yaml") and "name: " in text else "name: C\n" + text)
        code, said = run(folder)
        expect(f"{name} in club.yaml: in few words", code in (0, 1, 2) and len(said) < 400_000)
        folder = club(name + "-in-a-drill", "- A jump: 10\n")
        (folder / "drills").mkdir()
        (folder / "drills" / "a-jump.md").write_text(f"---\ntitle: A jump\n{text}---\n\n- cue: up\n")
        code, said = run(folder)
        expect(f"{name} in a drill: in few words", code in (0, 1) and len(said) < 400_000)
    folder = club("many-drills", "- Drill 5: 10\n- Drill nobody knows: 10\n" * 500)
    (folder / "drills").mkdir()
    for i in range(5000):
        (folder / "drills" / f"d{i:05}.md").write_text(f"---\ntitle: Drill {i}\nkind: jump\n---\n\n- cue: up\n")
    code, said = run(folder)
    expect("a library of 5000 drills: in few words", code in (0, 1) and len(said) < 400_000)
    folder = club("same-name-drills", "- A jump: 10\n")
    (folder / "drills").mkdir()
    for i in range(1500):
        (folder / "drills" / f"d{i:05}.md").write_text("---\ntitle: A jump\nalso: A hop\nkind: jump\n---\n\n- cue: up\n")
    code, said = run(folder)
    expect("a library of one name", code in (0, 1) and len(said) < 2_000_000)


def strange_files():
    folder = club("one-line-of-100-MB")
    with open(folder / "sessions" / "long.md", "wb") as file:
        file.truncate(100 * 1024 * 1024)
    code, said = run(folder)
    expect("100 MB in one line are refused by their size", code == 1 and "[unreadable-file]" in said)

    folder = club("loops-and-pipes", "[Loop](../parts/loop.md)\n\n[Pipe](../parts/pipe.md)\n\n![a](../pictures/pipe.png)\n")
    (folder / "drills").mkdir()
    (folder / "pictures").mkdir()
    (folder / "drills" / "again").symlink_to(folder / "drills")
    (folder / "drills" / "loop.md").symlink_to("loop.md")
    (folder / "drills" / "out.md").symlink_to("/etc/hostname")
    (folder / "drills" / "endless.md").symlink_to("/dev/zero")
    (folder / "parts" / "loop.md").symlink_to("loop.md")
    (folder / "sessions" / "up").symlink_to("..")
    (folder / "drills" / "folder.md").mkdir()
    os.mkfifo(folder / "drills" / "pipe.md")
    os.mkfifo(folder / "parts" / "pipe.md")
    os.mkfifo(folder / "pictures" / "pipe.png")
    code, said = run(folder)
    expect("loops, pipes and devices are not waited for", code in (0, 1) and len(said) < 100_000)
    expect("a link out of the library is not followed", pathlib.Path("/etc/hostname").read_text().strip() not in said)

    folder = club("vanishing-files", "", [f"p{i}" for i in range(200)])
    (folder / "drills").mkdir()
    child = subprocess.Popen([program, "build", "--jobs", "2"], cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    begin = time.monotonic()
    while child.poll() is None and time.monotonic() - begin < LONGEST:
        for i in range(0, 200, 3):
            path = folder / "sessions" / f"p{i}.md"
            path.unlink(missing_ok=True)
            (folder / "drills" / f"d{i}.md").write_text("---\ntitle: D\nkind: jump\n---\n")
    child.kill()
    expect("files that vanish do no harm", child.wait() in (0, 1))


def pictures():
    png = bytes.fromhex("89504e470d0a1a0a")

    def chunk(name, data):
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    def header(width, height, depth=8, colour=0, interlace=0):
        return chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, interlace))

    small = png + header(8, 8) + chunk(b"IDAT", zlib.compress(b"\0" * 72)) + chunk(b"IEND", b"")
    files = {
        "huge": png + header(0x7FFFFFFF, 0x7FFFFFFF) + chunk(b"IDAT", zlib.compress(b"\0" * 1000)) + chunk(b"IEND", b""),
        "lying": png + header(4000, 4000) + chunk(b"IDAT", zlib.compress(b"\0" * 10)) + chunk(b"IEND", b""),
        "bomb": png + header(9000, 2600, 8, 2) + chunk(b"IDAT", zlib.compress(b"\0" * (2600 * 27001), 9)) + chunk(b"IEND", b""),
        "text-bomb": png + header(8, 8) + chunk(b"zTXt", b"a\0\0" + zlib.compress(b"x" * 50_000_000, 9)) + small[33:],
        "no-pixels": png + header(0, 0) + chunk(b"IEND", b""),
        "cut": small[:-20],
        "wrong-sum": small[:40] + b"\xff" + small[41:],
        "only-a-name": b"",
        "script": b"#!/bin/sh\nexit 1\n",
    }
    for name, data in files.items():
        folder = club("picture-" + name, "![a picture](../p.png)\n")
        (folder / "p.png").write_bytes(data)
        code, said = run(folder)
        # A picture of one colour may be as large as it likes, within the limits; all others are no pictures.
        wanted = (0,) if name in ("bomb", "text-bomb") else (1,)
        expect(f"picture {name}: exit {code}, {said[:300]}", code in wanted and len(said) < 5000)
        expect(f"picture {name} is named", code == 0 or "p.png" in said)


def figures():
    """What stands in a club's figures costs no more than that, wherever their folder leads."""
    away = work / "figures-elsewhere"
    shutil.rmtree(away, ignore_errors=True)
    away.mkdir(parents=True)
    (away / "own.yaml").write_text("password: hunter2\n")
    folder = club("figures-are-a-link", "- A jump: 10\n  - figure: hunter\n")
    (folder / "figures").symlink_to(away)
    code, said = run(folder)
    expect("a figures folder that leads out is not read", code == 1 and "[outside-folder]" in said and "password" not in said)
    folder = club("figure-file-is-a-link")
    (folder / "figures").mkdir()
    (folder / "figures" / "own.yaml").symlink_to(away / "own.yaml")
    (folder / "figures" / "zero.yaml").symlink_to("/dev/zero")
    os.mkfifo(folder / "figures" / "pipe.yaml")
    code, said = run(folder)
    expect("a file of figures that leads out is not read", code == 1 and "[outside-folder]" in said and "password" not in said)
    folder = club("figures-are-a-file")
    (folder / "figures").write_text("figures: {}\n")
    expect("a file in the place of the folder is named", run(folder)[0] == 1)

    wide = "[" + ", ".join(["{from: f0, frames: [f0, f0, f0, f0]}"] * 4) + "]"
    body = "{touches: [feet, hands, knees, seat, elbows, head, back], joints: {hip: 90}, hands on: toes}"
    texts = {  # each is within the bounds of one file, and costs as much as it can there
        "figures-1700": "".join(f"  f{i}: {body}\n" for i in range(1_700)),
        "figures-2500": "".join(f"  f{i}: {{from: dish}}\n" for i in range(2_500)),
        "figures-in-a-chain": "  f0: {touches: feet}\n" + "".join(f"  f{i}: {{from: f{i - 1}}}\n" for i in range(1, 1_500)),
        "figures-in-a-circle": "".join(f"  f{i}: {{from: f{(i + 1) % 7}}}\n" for i in range(1_500)),
        "figures-deep": "  f0: {touches: feet}\n  f1: " + "{from: f0, frames: [" * 15 + "f0" + "]}" * 15 + "\n",
        "figures-deeper": "  f0: {touches: feet}\n  f1: " + "{from: f0, frames: [" * 300 + "f0" + "]}" * 300 + "\n",
        "figures-of-frames": "  f0: {touches: feet}\n" + "".join(
            f"  f{i}: {{frames: [f{i - 1}, f{i - 1}, f{i - 1}, f{i - 1}]}}\n" for i in range(1, 200)),
        "figures-of-wide-frames": f"  f0: {{touches: feet}}\n  f1: {{frames: {wide}}}\n" + "".join(
            f"  g{i}: {{frames: [f1, f1, f1, f1]}}\n" for i in range(1_000)),
        "figures-of-many-contacts": "  f1: {touches: [" + ", ".join(["hands", "feet", "near knee"] * 5_000) + "]}\n",
        "figures-of-some-contacts": "".join(
            f"  f{i}: {{touches: [" + ", ".join(["hands", "feet", "near knee"] * 20) + "]}\n" for i in range(250)),
        "figures-of-many-joints": "  f1: {touches: feet, joints: {" + ", ".join(["elbow: 9"] * 9_000) + "}}\n",
        "figures-with-many-hands": "  f1: {touches: feet, hands on: {" + ", ".join(["near: hips"] * 9_000) + "}}\n",
        "figures-with-a-long-name": "  " + "f" * 900 + ": {touches: feet, alt: " + "x" * 200_000 + "}\n",
        "figures-of-many-names": "  f1: {touches: feet, also: [" + ", ".join(f"n{i}" for i in range(18_000)) + "]}\n",
        "figures-of-nonsense": "  f1: {touches: [seat, hands, feet, head], lean: 360, joints: {hip: 360, spine: -360, knee: 360}}\n",
    }
    for name, text in texts.items():
        folder = club(name, "- A jump: 10\n  - figure: f1\n" * 100)
        (folder / "figures").mkdir()
        (folder / "figures" / "own.yaml").write_text("figures:\n" + text)
        code, said = run(folder)
        expect(f"{name}: in few words", code in (0, 1) and len(said) < 2_000_000)
        expect(f"{name}: bounded before it is read", "too long to be read" not in said)
    folder = club("figure-files", "- A jump: 10\n  - figure: f1\n")
    (folder / "figures").mkdir()
    for i in range(1_000):
        (folder / "figures" / f"f{i}.yaml").write_text(f"figures: {{f{i}: {{touches: feet}}}}\n")
    code, said = run(folder)
    expect("a thousand files of figures: the first are read", code == 1 and "more than" in said)


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
names()
loose_links()
if not under_sanitizer():
    costly()
    memory()
    long_lists()
quotes()
repositories()
sizes()
club_files()
strange_files()
pictures()
figures()
process()
for failure in failures:
    print("FAILED:", failure)
print(f"{passed} passed, {len(failures)} failed")
sys.exit(1 if failures else 0)
