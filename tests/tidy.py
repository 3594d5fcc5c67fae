#!/usr/bin/env python3
"""clang-tidy over src/, on what has changed since it last passed.

usage: tidy.py [--alone] [FILE…]     from the repository's top; FILEs are looked at whatever was found before

A file is looked at again when its bytes, those of a header of ours that it reaches, `.clang-tidy` or clang-tidy itself
differ from when it was found clean: what was clean is remembered as a hash in build/tidy/. Our includes are always
written "room/file.h", so reaching them needs no preprocessor. The tests are left to the compilers' warnings: Catch2's
macros would take clang-tidy longer than all of src/.

A file alone takes 6 to 12 s of CPU, much of that in clang's static analyser; all files would take longer than all tests
do. So where much of a batch that is compiled together (a unity source) has changed, as in a new clone,
the batch is looked at as one, without the analyser, which follows only what stands in the main file itself: 140 s of CPU
for all of src/. A few changed files, which is what somebody at work has, are looked at alone, by the analyser, too.
A new clone, where nothing is remembered, trusts what its last commits did not touch: whoever committed it has looked.
`--alone` does so with every file that was not found clean so: it is the nightly run's, and also notices a source that
works only because of what another in its batch includes.
"""
import concurrent.futures
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys

TOOL = "clang-tidy"
BATCHES, ALONE = pathlib.Path("build-clang"), pathlib.Path("build-clang-alone")  # of the presets of these names
RECENT = 10  # commits whose files a new clone looks at
SHARE = 4  # a batch is looked at as one when more than a quarter of it has changed: its other files cost little then
clean = pathlib.Path("build/tidy")
sources = sorted(pathlib.Path("src").glob("*/*.cpp"))
settings = pathlib.Path(".clang-tidy").read_bytes() + subprocess.run([TOOL, "--version"], capture_output=True).stdout
reached = {}


def includes(path):
    if path not in reached:
        found = re.findall(rb'^#include "([^"]+)"', path.read_bytes(), flags=re.M)
        reached[path] = [header for header in (pathlib.Path("src") / f.decode() for f in found) if header.exists()]
    return reached[path]


def reach(source):
    todo, seen = [source], set()
    while todo:
        path = todo.pop()
        if path not in seen:
            seen.add(path)
            todo += includes(path)
    return seen


def fingerprint(source):
    total = hashlib.sha256(settings)
    for path in sorted(reach(source)):
        total.update(str(path).encode() + b"\0" + path.read_bytes() + b"\0")
    return total.hexdigest()


def configured(folder):
    """Without precompiled headers and with clang's own flags; again each time, as files may have been added."""
    ran = subprocess.run(["cmake", "--preset", folder.name.removeprefix("build-")], capture_output=True, text=True)
    if ran.returncode != 0:
        sys.exit(ran.stdout + ran.stderr)
    return folder


def batches():
    """Which sources each unity source of src/ takes in."""
    found = {}
    for entry in json.loads((configured(BATCHES) / "compile_commands.json").read_text()):
        unity = pathlib.Path(entry["file"])
        if "Unity" in unity.parts:
            inside = [pathlib.Path(f).relative_to(os.getcwd()) for f in re.findall(r'#include "([^"]+)"', unity.read_text())]
            if all(f in prints for f in inside):
                found[unity] = inside
    return found


def recent():
    """The sources that the last commits changed, with one for each header; all where git cannot say."""
    ran = subprocess.run(["git", "diff", "--name-only", f"HEAD~{RECENT}", "--", "src"], capture_output=True, text=True)
    if ran.returncode != 0:
        return set(sources)
    changed = {pathlib.Path(name) for name in ran.stdout.split()}
    found = changed & set(sources)
    for header in changed - found:
        found.update([source for source in sources if header in reach(source)][:1])
    return found


def look(task):
    folder, file, covered = task
    fewer = ["--checks=-clang-analyzer-*"] if folder == BATCHES else []
    ran = subprocess.run([TOOL, "--quiet", *fewer, "-p", folder, file], capture_output=True, text=True)
    return folder, covered, ran.returncode, ran.stdout + (ran.stderr if "error:" in ran.stderr else "")


alone = "--alone" in sys.argv
named = {pathlib.Path(name) for name in sys.argv[1:] if name != "--alone"}
prints = {source: fingerprint(source) for source in sources}
if not clean.exists():
    clean.mkdir(parents=True)
    touched = recent()
    for source in sources:
        if source not in touched:
            (clean / prints[source]).touch()
known = set(os.listdir(clean))
mark = ".alone" if alone else ""
todo = {source for source in sources if source in named or (not named and prints[source] + mark not in known)}
if not todo:
    sys.exit(0)
tasks, left = [], set(todo)
if not alone and len(todo) > 1:
    for unity, inside in batches().items():
        if SHARE * len(left & set(inside)) > len(inside):
            tasks.append((BATCHES, unity, inside))
            left -= set(inside)
if left:
    folder = configured(ALONE)
    tasks += [(folder, source, [source]) for source in sorted(left)]
failed, findings = 0, set()
with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
    for folder, covered, code, said in pool.map(look, tasks):
        if code == 0:
            for source in covered:
                (clean / prints[source]).touch()
                if folder == ALONE:
                    (clean / (prints[source] + ".alone")).touch()
        else:
            failed += 1
            # Headers are reached by the walls' links, and one mistake in a header by many files.
            said = re.sub(r"build-clang(-alone)?/walls/\w+/", "src/", said.replace(os.getcwd() + "/", ""))
            findings.update(re.split(r"(?m)^(?=src/\S+: (?:error|warning):)", said))
print("".join(sorted(findings)), end="")
for old in known:
    if old.removesuffix(".alone") not in prints.values():
        (clean / old).unlink()
looked = sum(len(covered) for _, _, covered in tasks)
print(f"clang-tidy: {looked} of {len(sources)} files looked at in {len(tasks)} runs, {failed} with findings")
sys.exit(1 if failed else 0)
