#!/usr/bin/env python3
"""The installed program works without the tree it came from, also when its folder is moved.

usage: installed.py CMAKE BUILD_FOLDER REPOSITORY WORK_FOLDER

Installs into a prefix, moves the prefix, and from another folder runs the program there on a copy of the demo club:
the PDFs must be the bytes the build folder's own program makes. `begin` finds the starter it was installed with.
"""
import os
import pathlib
import shutil
import subprocess
import sys

cmake, build, repository, work = sys.argv[1], *map(lambda p: pathlib.Path(p).resolve(), sys.argv[2:5])
environment = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "SOURCE_DATE_EPOCH": "1764600000"}


def run(*command, cwd=work):
    ran = subprocess.run([str(c) for c in command], cwd=cwd, env=environment, capture_output=True, text=True)
    if ran.returncode != 0:
        sys.exit(f"{' '.join(map(str, command))}: exit {ran.returncode}\n{ran.stdout}{ran.stderr}")
    return ran


def pdfs(folder):
    return {path.name: path.read_bytes() for path in sorted(folder.rglob("*.pdf"))}


shutil.rmtree(work, ignore_errors=True)
work.mkdir(parents=True)
run(cmake, "--install", build, "--prefix", work / "first")
(work / "first").rename(work / "moved")
installed = work / "moved"
club = work / "club"
shutil.copytree(installed / "share" / "chalkleaf" / "plans", club)
ran = run(installed / "bin" / "chalkleaf", "build", cwd=club)
made = pdfs(club / "out")
if ran.stderr:
    sys.exit(f"the installed program had something to say:\n{ran.stderr}")
run(build / "chalkleaf", "build", club, "--out", work / "compared")
plans = len(list((repository / "plans" / "sessions").rglob("*.md")))
if len(made) < plans:
    sys.exit(f"{len(made)} PDFs of {plans} plans")
if made != pdfs(work / "compared"):
    sys.exit("the installed program's PDFs differ from the build folder's")
run(installed / "bin" / "chalkleaf", "begin", "begun")
run(installed / "bin" / "chalkleaf", "build", "--strict", "begun")
print(f"{len(made)} PDFs from the installed program, the same bytes")
