#!/usr/bin/env python3
"""Every path that README.md and DEVELOPERS.md name in code is there, and every test that a source says it is tested by.

usage: named_paths.py REPOSITORY

Looked at are the words of `code` and of indented code blocks that begin with a top-level folder, or with a room and a
slash (`base/files.h` is src/base/files.h). Patterns (`<…>`, `*`) and what a build makes (`build/…`) are passed over.
Behind "Tested by" in a comment of src/, a file without a folder is one beside the file named before it, and a pattern has to
match something.
"""
import pathlib
import re
import sys

repository = pathlib.Path(sys.argv[1])
FOLDERS = ("src/", "tests/", "themes/", ".ci/", "fonts/", "plans/", "examples/")
MADE = ("plans/out", "plans/private")  # a build and a club make these
rooms = tuple(f"{path.name}/" for path in (repository / "src").iterdir() if path.is_dir())
missing = []
seen = 0


def code_of(text):
    # Fenced blocks show plans, whose paths are the reader's own.
    text = re.sub(r"^```.*?^```$", "", text, flags=re.M | re.S)
    for line in text.splitlines():
        yield from [line] if line.startswith("    ") else re.findall(r"`([^`]+)`", line)
        yield from re.findall(r"\]\(([^)#]+)\)", line)


for name in ("README.md", "DEVELOPERS.md"):
    for code in code_of((repository / name).read_text()):
        for word in code.split():
            word = word.rstrip(".,;:…")
            if any(mark in word for mark in "<*") or word.startswith(MADE):
                continue
            if word.startswith(FOLDERS):
                path = repository / word
            elif word.startswith(rooms) and "." in word:
                path = repository / "src" / word
            else:
                continue
            seen += 1
            if not path.exists():
                missing.append(f"{name} names {word}, which is not there")

for path in sorted((repository / "src").rglob("*")):
    if path.suffix not in (".cpp", ".h"):
        continue
    # Comments as running text; a line of code ends a comment.
    text = " ".join(line.strip()[2:].strip("/< ") if line.strip().startswith("//") else "\0"
                    for line in path.read_text().splitlines())
    for sentence in re.findall(r"Tested by ([^\0]*)", text):
        folder, named = None, 0
        for word in re.findall(r"(?:tests|examples)/[\w/.*-]+|\b\w+_test\.cpp", sentence):
            whole = word.rstrip(".") if "/" in word else f"{folder}/{word}"
            folder = whole.rpartition("/")[0]
            named += 1
            if not any(repository.glob(whole.rstrip("/"))):
                missing.append(f"{path.relative_to(repository)} says it is tested by {whole}, which is not there")
        if not named:
            missing.append(f"{path.relative_to(repository)} does not say by which file it is tested")
        seen += named

print("\n".join(missing + [f"{seen} paths named, {len(missing)} not there"]))
sys.exit(1 if missing or not seen else 0)
