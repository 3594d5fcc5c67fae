#!/usr/bin/env python3
"""Every phrase the sheets say is in the list of phrases and in each language's file, and none is there for nothing.

usage: phrases.py REPOSITORY

`Labels::say` is asked by a key in a string, which no compiler compares with the list in src/sheet/phrases.cpp. Read here are
the strings of src/sheet: one with hyphens is a key, and so is whatever stands alone as the first argument of `say` or `count`.
A key that is not listed, or counted where the list has one form only (or the other way round), fails; so does a listed one
that no sheet says, and a key of themes/labels/*.yaml that is not listed, or that is missing there.
"""
import pathlib
import re
import sys

repository = pathlib.Path(sys.argv[1])
sheet = repository / "src" / "sheet"
# These read files of YAML or name diagnostics: their strings with hyphens are other keys.
OTHER_KEYS = {"labels.cpp", "theme.cpp", "theme_likes.cpp", "theme_checks.cpp", "fit.cpp"}
KEY = r'"([a-z]+(?:-[a-z]+)*)"'
problems = []

listed = {key: counted == "true"
          for key, counted in re.findall(r'\{%s, "[^"]*", (true|false)\}' % KEY, (sheet / "phrases.cpp").read_text())}
said = set()
for path in sorted(sheet.iterdir()):
    if path.name == "phrases.cpp" or path.suffix not in (".cpp", ".h"):
        continue
    text = re.sub(r"//.*", "", path.read_text())
    said |= set(re.findall(KEY, text))
    if path.name in OTHER_KEYS:
        continue
    asked = {key for key in re.findall(KEY, text) if "-" in key}
    for function, key in re.findall(r"\b(say|count)\(\s*%s\s*[,)]" % KEY, text):
        asked.add(key)
        if key in listed and listed[key] != (function == "count"):
            problems.append(f"{path.name} asks {function}(\"{key}\"); src/sheet/phrases.cpp has it otherwise")
    problems += [f"{path.name} says ‘{key}’, which src/sheet/phrases.cpp does not list" for key in sorted(asked - set(listed))]
problems += [f"src/sheet/phrases.cpp lists ‘{key}’, which no sheet says" for key in sorted(set(listed) - said)]

files = sorted((repository / "themes" / "labels").glob("*.yaml"))
for path in files:
    there = set(re.findall(r"(?m)^  ([a-z]+(?:-[a-z]+)*):", path.read_text().split("\nphrases:", 1)[1]))
    problems += [f"themes/labels/{path.name} lacks ‘{key}’" for key in sorted(set(listed) - there)]
    problems += [f"themes/labels/{path.name} has ‘{key}’, which no sheet says" for key in sorted(there - set(listed))]

print("\n".join(problems + [f"{len(listed)} phrases in {len(files)} languages, {len(problems)} problems"]))
sys.exit(1 if problems or len(listed) < 100 or not files else 0)
