#!/usr/bin/env python3
"""Puts faults into src/ one at a time and asks whether a test notices.

usage: mutants.py [--seed N] [--count N] [--least PERCENT] [--again]      from the repository's top; hours

Works on a copy of the tree in build-mutants/, so the tree stays as it is. Lines are drawn from all executable lines of src/, then
one of the faults a line can have: a comparison, a sum or a logical operator turned, a constant one larger, a negation dropped, a
result emptied, a statement left out. A fault that does not compile, or whose object files are those of the tree without it, is
none, and another is drawn. What notices is asked in this order, until one does: the tests of the room, of the rooms that see it,
`cases.py`, `mistakes.py`, `guide.py`. A test that takes four times as long as without the fault has noticed.

Each outcome is kept in build-mutants/SEED.txt as it is found, so that a run that was stopped goes on where it was; --again begins
anew. Exits with 1 when fewer than --least percent (90) are noticed. Survivors are printed: each wants a test that fails under it
first, or the reason why nobody could notice.
"""
import argparse
import hashlib
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import time

WORK = pathlib.Path("build-mutants")
TREE = WORK / "tree"
BUILD = TREE / "build"
# The rooms in the order a plan flows through them: a fault is noticed nearest to where it is.
ROOMS = "base source dose rota draft plan reason figure picture type page sheet pdf club cli".split()
# Of those without tests of their own others ask: `dose` is asked by `plan`.
TESTED = [room for room in ROOMS if pathlib.Path("tests", room).is_dir()]
PYTHON = "/usr/bin/python3"

# clang-format puts spaces round binary operators and none round the brackets of templates.
TURNED = {" < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > ", " == ": " != ", " != ": " == ",
          " && ": " || ", " || ": " && ", " + ": " - ", " - ": " + ", " * ": " / ", " / ": " * ", " += ": " -= ", " -= ": " += ",
          "true": "false", "false": "true"}
DECLARES = re.compile(r"\s*(using|namespace|static_assert|template|friend|typedef|struct|class|enum|public|private|case|default"
                      r"|extern|#|\{|\"|\)|///?|[\w:<>,&* ]+\([^=]*\)( const)?( noexcept)?( override)?;$)")
CALLS = re.compile(r"\s*([\w.\[\]>-]+(\.|->|::))?\w+\(.*\);$|\s*[\w.\[\]>*-]+ [+|&-]?= .*;$|\s*(\+\+|--)\w+;$|\s*(continue|break);$")


def without_strings(line):
    """The line with the insides of its strings and its comment blanked, every character in its place."""
    line = re.sub(r'"(?:[^"\\]|\\.)*"|\'(?:[^\'\\]|\\.)*\'', lambda m: m[0][0] + "\0" * (len(m[0]) - 2) + m[0][-1], line)
    at = line.find("//")
    return line if at < 0 else line[:at]


def faults_of(line):
    """All lines with one fault in place of this one; none for what is not executed."""
    code = without_strings(line)
    called = CALLS.match(code.rstrip())
    if not code.startswith("  ") or not code.strip() or (DECLARES.match(code.rstrip()) and not called):
        return []
    found = []
    for old, new in TURNED.items():
        for match in re.finditer(rf"\b{old}\b" if old.isalpha() else re.escape(old), code):
            found.append(line[:match.start()] + new + line[match.end():])
    for match in re.finditer(r"(?<![\w.'])\d+(?![\w.'])", code):
        found.append(line[:match.start()] + str(int(match[0]) + 1) + line[match.end():])
    for match in re.finditer(r"(?<=[(\s])!(?=[\w(])", code):
        found.append(line[:match.start()] + line[match.end():])
    if re.match(r"\s*(if \(.*\) )?return [^;{}]+;$", code.rstrip()):
        found.append(re.sub(r"return .*;", "return {};", line, count=1))
    if called and not re.match(r"\s*(return|const|auto|co_\w+|else)\b", code):
        found.append("  ;  // left out")
    return found


def lines_of(tree):
    """(file, number of the line from 0) of all that can have a fault."""
    out = []
    for path in sorted((tree / "src").rglob("*")):
        if path.suffix in (".cpp", ".h"):
            raw = False
            for number, line in enumerate(path.read_text().splitlines()):
                raw = raw or 'R"' in line
                if not raw and faults_of(line):
                    out.append((path.relative_to(tree), number))
                raw = raw and not re.search(r'\)\w*"', line)
    return out


def copied():
    """The tree as git knows or would know it, only files that differ written, so that little is built again."""
    names = subprocess.run(["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"], capture_output=True, check=True)
    for name in filter(None, names.stdout.decode().split("\0")):
        source, target = pathlib.Path(name), TREE / name
        if source.is_file() and (not target.exists() or target.read_bytes() != source.read_bytes()):
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(source, target)
            os.utime(target)
    subprocess.run([".ci/setup", "build"], cwd=TREE, check=True)
    if not (BUILD / "build.ninja").exists():
        subprocess.run(["cmake", "--preset", "tests"], cwd=TREE, check=True, stdout=subprocess.DEVNULL)


def built(*targets):
    return subprocess.run(["nice", "ninja", "-j2", "-C", str(BUILD), *targets], capture_output=True, text=True).returncode == 0


def objects():
    """A hash of the program's object files."""
    total = hashlib.sha256()
    for path in sorted((BUILD / "rooms").rglob("*.o")):
        total.update(path.read_bytes())
    return total.hexdigest()


def watchers(room):
    """(name, targets to build, command), nearest first."""
    sees = dict(line.split(":", 1) for line in (BUILD / "sees.txt").read_text().splitlines())
    rooms = [one for one in ROOMS[ROOMS.index(room):] if one in TESTED and (one == room or room in sees[one].split())]
    here, program = TREE.resolve(), (BUILD / "chalkleaf").resolve()
    for one in rooms:
        # No benchmarks ([.]); the first check that fails is enough.
        yield one, [f"test_{one}"] + ["chalkleaf"] * (one in ("club", "cli")), [f"{BUILD.resolve()}/tests/{one}/test_{one}", "--abort", "~[.]"]
    tests, work = here / "tests", WORK.resolve() / "work"
    yield "cases", ["chalkleaf"], [PYTHON, tests / "cases.py", program]
    yield "mistakes", ["chalkleaf"], [PYTHON, tests / "mistakes.py", program, here / "examples/mistakes", work / "mistakes"]
    yield "guide", ["chalkleaf"], [PYTHON, tests / "guide.py", program, here / "examples/README.md", work / "guide"]


def asked(command, seconds):
    """Whether a test passes, and how long it takes."""
    began = time.monotonic()
    try:
        ran = subprocess.run(["nice", *map(str, command)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=seconds)
        return ran.returncode == 0, time.monotonic() - began
    except subprocess.TimeoutExpired:
        return False, seconds


def outcome(path, usual, without):
    """Who notices the fault that is in the tree now; `` for nobody, None when it is no fault."""
    room = path.parts[1]
    compiled = False
    for name, targets, command in watchers(room):
        if not built(*targets):
            return None
        if not compiled and objects() == without:
            return None
        compiled = True
        passes, _ = asked(command, max(60, 4 * usual[name]))
        if not passes:
            return name
    return ""


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=60)
    parser.add_argument("--least", type=float, default=90)
    parser.add_argument("--again", action="store_true")
    wanted = parser.parse_args()
    WORK.mkdir(exist_ok=True)
    copied()
    if not built("chalkleaf", *[f"test_{room}" for room in TESTED]):
        sys.exit("the tree does not build")
    without, usual = objects(), {}
    for name, _, command in [w for room in TESTED for w in list(watchers(room))[:1]] + list(watchers("club"))[1:]:
        passes, usual[name] = asked(command, 600)
        if not passes:
            sys.exit(f"{name} fails without any fault")
    kept = WORK / f"{wanted.seed}.txt"
    if wanted.again:
        kept.unlink(missing_ok=True)
    before = dict(line.split("\t", 1) for line in kept.read_text().splitlines()) if kept.exists() else {}
    draw, lines = random.Random(wanted.seed), lines_of(TREE)
    noticed, survivors, tried = {}, [], set()
    while sum(noticed.values()) + len(survivors) < min(wanted.count, len(lines)):
        path, number = draw.choice(lines)
        text = (TREE / path).read_text()
        old = text.splitlines()
        new = draw.choice(faults_of(old[number]))
        shown = f"{path}:{number + 1}: {old[number].strip()}  =>  {new.strip()}"
        if shown in tried:
            continue
        tried.add(shown)
        if shown not in before:
            try:
                (TREE / path).write_text("\n".join(old[:number] + [new] + old[number + 1:]) + "\n")
                who = outcome(path, usual, without)
            finally:
                (TREE / path).write_text(text)
            before[shown] = "no fault" if who is None else who
            with kept.open("a") as file:
                file.write(f"{shown}\t{before[shown]}\n")
            print(f"{before[shown] or 'SURVIVES':10} {shown}", flush=True)
        if before[shown] == "":
            survivors.append(shown)
        elif before[shown] != "no fault":
            noticed[before[shown]] = noticed.get(before[shown], 0) + 1
    built("chalkleaf")
    total = sum(noticed.values()) + len(survivors)
    print("\nSurvivors:" if survivors else "\nNo survivors.", *survivors, sep="\n")
    print(f"\n{len(lines)} lines can have a fault; {total} faults of seed {wanted.seed}: " +
          ", ".join(f"{count} noticed by {name}" for name, count in sorted(noticed.items(), key=lambda n: -n[1])) +
          f", {len(survivors)} by nobody ({100 * (total - len(survivors)) / total:.0f} % noticed)")
    sys.exit(1 if 100 * (total - len(survivors)) < wanted.least * total else 0)


main()
