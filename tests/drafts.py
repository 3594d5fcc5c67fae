#!/usr/bin/env python3
"""Drafts as coaches type them (tests/drafts), each with what its author meant: how much is understood does not fall.

usage: drafts.py PROGRAM FOLDER

FOLDER/score.py measures; here stand the least figures. Raise one when the program has become better.
"""
import re
import subprocess
import sys

LEAST = {"lines": 96, "drills": 94, "words": 100, "printed": 100}  # percent
MOST = {"false errors": 0, "misread": 9, "doses invented": 0}

program, folder = sys.argv[1:3]
ran = subprocess.run([sys.executable, f"{folder}/score.py", program], capture_output=True, text=True)
print(ran.stdout + ran.stderr)
failures = []
for name, least in LEAST.items():
    found = re.search(rf"{name} \d+ of \d+ \((\d+) %\)", ran.stdout)
    if not found or int(found.group(1)) < least:
        failures.append(f"{name}: less than {least} %")
for name, most in MOST.items():
    found = re.search(rf"{name} (\d+)", ran.stdout)
    if not found or int(found.group(1)) > most:
        failures.append(f"{name}: more than {most}")
for failure in failures:
    print(failure)
sys.exit(1 if failures else 0)
