#!/usr/bin/env python3
"""clang-tidy over src/, on what has changed since it last passed.

usage: tidy.py [FILE…]     from the repository's top; FILEs are looked at whatever was found before

A file is looked at again when its bytes, those of a header of ours that it reaches, `.clang-tidy` or clang-tidy itself
differ from when it was found clean: what was clean is remembered as a hash in build/tidy/. Our includes are always
written "room/file.h", so reaching them needs no preprocessor. The tests are left to the compilers' warnings: Catch2's
macros would take clang-tidy longer than all of src/.
"""
import concurrent.futures
import hashlib
import os
import pathlib
import re
import subprocess
import sys

TOOL = "clang-tidy"
DATABASE = pathlib.Path("build-clang")
clean = pathlib.Path("build/tidy")
sources = sorted(pathlib.Path("src").glob("*/*.cpp"))
settings = pathlib.Path(".clang-tidy").read_bytes() + subprocess.run([TOOL, "--version"], capture_output=True).stdout
reached = {}


def includes(path):
    if path not in reached:
        found = re.findall(rb'^#include "([^"]+)"', path.read_bytes(), flags=re.M)
        reached[path] = [header for header in (pathlib.Path("src") / f.decode() for f in found) if header.exists()]
    return reached[path]


def fingerprint(source):
    todo, seen = [source], set()
    while todo:
        path = todo.pop()
        if path not in seen:
            seen.add(path)
            todo += includes(path)
    total = hashlib.sha256(settings)
    for path in sorted(seen):
        total.update(str(path).encode() + b"\0" + path.read_bytes() + b"\0")
    return total.hexdigest()


def look(source):
    ran = subprocess.run([TOOL, "--quiet", "-p", DATABASE, source], capture_output=True, text=True)
    return source, ran.returncode, ran.stdout


prints = {source: fingerprint(source) for source in sources}
known = set(os.listdir(clean)) if clean.exists() else set()
named = {pathlib.Path(name) for name in sys.argv[1:]}
todo = [source for source in sources if source in named or (not named and prints[source] not in known)]
if not todo:
    sys.exit(0)
# Without precompiled headers and with clang's own flags; also when files were added.
configured = subprocess.run(["cmake", "--preset", "clang"], capture_output=True, text=True)
if configured.returncode != 0:
    sys.exit(configured.stdout + configured.stderr)
clean.mkdir(parents=True, exist_ok=True)
failed, findings = 0, set()
with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
    for source, code, said in pool.map(look, todo):
        if code == 0:
            (clean / prints[source]).touch()
        else:
            failed += 1
            # Headers are reached by the walls' links, and one mistake in a header by many files.
            said = re.sub(re.escape(str(DATABASE)) + r"/walls/\w+/", "src/", said.replace(os.getcwd() + "/", ""))
            findings.update(re.split(r"(?m)^(?=src/\S+: (?:error|warning):)", said))
print("".join(sorted(findings)), end="")
for old in known - set(prints.values()):
    (clean / old).unlink()
print(f"clang-tidy: {len(todo)} of {len(sources)} files looked at, {failed} with findings")
sys.exit(1 if failed else 0)
