#!/bin/sh
# Makes themes/words/en/danger_weights.txt anew from all lines we know, in seconds.
#
#     tests/learn_guard.sh BUILD-FOLDER
#
# Sound lines besides: the shelf, the demo club, the guide, and the good plans of the cases.
set -eu
here=$(dirname "$0")
ninja -C "$1" learn_dangers > /dev/null
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/guide"
cp "$here"/../examples/*.md "$work/guide"
python3 "$here/guard_lines.py" "$here/../themes/shelf" "$here/../plans" "$work/guide" "$here"/cases/good-*/ > "$work/shelf.txt"
"$1/tests/learn_dangers" "$here/../themes/words/en/dangers.yaml" "$here"/guard/lines/*.txt \
  "$here/guard/dangerous_lines.txt" "$here/guard/sound_lines.txt" "$work/shelf.txt" > "$work/weights.txt"
cp "$work/weights.txt" "$here/../themes/words/en/danger_weights.txt"
