#!/usr/bin/env python3
"""The walls between the rooms hold: a room that includes a room it may not see does not compile.

usage: walls.py COMPILER REPOSITORY WALLS_FOLDER SEES_FILE

SEES_FILE is written by CMake: a line `room: room room …` for each room, from its CMakeLists.txt. For every pair
of rooms the compiler is asked whether a file of the one can include a header of the other, with exactly the include
path CMake gives the room: yes where the wall has a door, no where not.
"""
import pathlib
import re
import subprocess
import sys

compiler, repository, walls, sees_file = sys.argv[1:5]
repository = pathlib.Path(repository)
failures = []

# The doors of the house, as DEVELOPERS.md draws them. Opening one more is a decision: change it here too.
DOORS = {
    "base": "",
    "source": "base",
    "dose": "base source",
    "rota": "base source",
    "draft": "base source dose rota",
    "plan": "base source dose",
    "reason": "base dose rota plan",
    "figure": "base source",
    "picture": "base",
    "type": "base",
    "page": "base type",
    "sheet": "base source dose rota plan reason figure type page",
    "pdf": "base type page",
    "club": "base source dose rota draft plan reason figure picture type page sheet pdf",
    "cli": "base dose rota draft plan reason club",
}
# Libraries that stay inside one room, or two.
OWNED = {
    r"yaml-cpp/": "source", r"cmark-gfm": "source", r"hpdf": "pdf", r"hb": "type", r"unicode/(?!uchar)": "type",
    r"unicode/uchar": "base type",  # properties of characters
    r"zlib": "club", r"cadical": "rota", r"CLI/": "cli", r"nlohmann/": "base", r"xxhash": "base", r"libdeflate": "pdf",
    r"png": "picture", r"j(peglib|error|morecfg)": "picture",
}


def reached(room, headers):
    """Which of the headers a file of the room can include. What they include themselves is asked of their own rooms."""
    text = "".join(f'#if __has_include("{header}")\nyes {header}\n#endif\n' for header in headers)
    path = [f"-I{walls}/{name}" for name in [room] + DOORS[room].split()]
    ran = subprocess.run([compiler, "-std=c++20", "-E", "-P", "-x", "c++", *path, "-"], input=text, capture_output=True,
                         text=True, check=True)
    return {line.removeprefix("yes ").replace(" ", "") for line in ran.stdout.splitlines() if line.startswith("yes ")}


declared = dict(line.split(":", 1) for line in open(sees_file).read().splitlines() if ":" in line)
for room, rooms in DOORS.items():
    found = set(declared.get(room, "").split()) - {room}
    if found != set(rooms.split()):
        failures.append(f"src/{room}/CMakeLists.txt sees {sorted(found)}, the house has {sorted(rooms.split())}")

header_of = {room: f"{room}/{min(p.name for p in (repository / 'src' / room).glob('*.h'))}" for room in DOORS}
asked = 0
for room in DOORS:
    found = reached(room, header_of.values())
    for other, header in header_of.items():
        allowed = other == room or other in DOORS[room].split()
        asked += 1
        if (header in found) != allowed:
            failures.append(f"{room} {'cannot' if allowed else 'can'} include {header}")

for path in sorted((repository / "src").rglob("*")):
    if path.suffix not in (".cpp", ".h"):
        continue
    room = path.relative_to(repository / "src").parts[0]
    for number, line in enumerate(path.read_text().splitlines(), 1):
        include = re.match(r'\s*#\s*include\s*([<"])([^">]+)', line)
        if not include:
            continue
        if ".." in include.group(2):
            failures.append(f"{path}:{number}: climbs over a wall: {include.group(2)}")
        for library, owner in OWNED.items():
            if include.group(1) == "<" and re.match(library, include.group(2)) and room not in owner.split():
                failures.append(f"{path}:{number}: {include.group(2)} belongs in {owner}")

for failure in failures:
    print(failure)
print(f"{asked} doors and walls tried, {len(failures)} wrong")
sys.exit(1 if failures else 0)
