#!/bin/sh
# From nothing to the demo club's PDFs: installs what is missing, compiles, builds, says where they are.
# Quick when run again.
set -eu
cd "$(dirname "$0")/.."
.ci/setup build
[ -f build/build.ninja ] || cmake --preset release >/dev/null
cmake --build --preset release -- --quiet
build/chalkleaf build plans
cat <<'END'

The demo club's sheets are in plans/out. Open one, for example:
  plans/out/kestrels-bar-shapes-card.pdf          a coach card, for the gym
  plans/out/kestrels-home-strong-shapes-sheet.pdf a home sheet, for a family
  plans/out/swifts-squad-evening-poster.pdf       who is where in a squad evening, for the wall
Next:
  cp plans/sessions/kestrels-bar-shapes.md plans/sessions/my-session.md
  edit it, then     build/chalkleaf build plans/sessions/my-session.md
  the timetable     build/chalkleaf times plans/sessions/my-session.md
  all commands      build/chalkleaf --help
END
