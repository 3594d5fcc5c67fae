#!/usr/bin/env python3
"""Runs every case of tests/cases: a plan, and what the program is expected to say about it.

usage: cases.py PROGRAM [--update] [--one-in N] [NAME…]

A case is a folder. `about` says in a sentence what is tested. What is checked is `plan.md`, in the club of the
folder's `club.yaml` if there is one. The expectations beside it are compared with what the program prints:
  expected.messages   the one-line messages of `check`, whole; empty when there is nothing to say
  expected.times      the timetable of `times plan.md`, where the file exists
A case whose name begins with `good-` must have no message at all.
--update writes what the program says now; read the difference before you commit it.
--one-in N runs every Nth case only, for a slow build of the program; all of them where CHALKLEAF_ALL_ROUNDS is set.
"""
import os
import pathlib
import subprocess
import sys

program = os.path.abspath(sys.argv[1])
update = "--update" in sys.argv
arguments = sys.argv[2:]
one_in = 1
if "--one-in" in arguments:
    at = arguments.index("--one-in")
    one_in = 1 if "CHALKLEAF_ALL_ROUNDS" in os.environ else int(arguments[at + 1])
    del arguments[at:at + 2]
names = [a for a in arguments if not a.startswith("--")]
root = pathlib.Path(__file__).parent / "cases"
failed = passed = 0


def run(folder, *arguments):
    environment = {"PATH": os.environ["PATH"], "NO_COLOR": "1", "LC_ALL": "C.UTF-8"}
    ran = subprocess.run([program, *arguments], cwd=folder, env=environment, capture_output=True, timeout=20)
    return ran.returncode, ran.stdout.decode("utf-8", "replace"), ran.stderr.decode("utf-8", "replace")


def compare(case, file, said):
    global failed, passed
    path = case / file
    if update:
        path.write_text(said)
    wanted = path.read_text() if path.exists() else None
    if said == wanted:
        passed += 1
        return
    failed += 1
    print(f"--- {case.name}/{file}: expected\n{wanted}+++ said\n{said}")


cases = [case for case in sorted(root.iterdir()) if case.is_dir() and (not names or case.name in names)]
for case in cases[::one_in]:
    if not (case / "about").exists():
        failed += 1
        print(f"--- {case.name}: lacks `about`")
    code, _, said = run(case, "check", "--messages", "short", "plan.md")
    compare(case, "expected.messages", said)
    errors = any(": error: " in line for line in said.splitlines())
    wanted = 1 if errors else 0
    if code != wanted:
        failed += 1
        print(f"--- {case.name}: exit code {code}, expected {wanted}")
    if case.name.startswith("good-") and said:
        failed += 1
        print(f"--- {case.name}: a good plan got messages:\n{said}")
    if (case / "expected.times").exists():
        code, said, _ = run(case, "times", "plan.md")
        compare(case, "expected.times", said)

print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed else 0)
