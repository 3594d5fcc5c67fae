#!/bin/sh
# Makes README's pictures again from the demo club: sh examples/pictures/make.sh (needs a build and poppler-utils).
set -eu
cd "$(dirname "$0")/../.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
build/chalkleaf build plans --out "$out" >/dev/null
page() { pdftoppm -r 90 -f 1 -l 1 -singlefile -png "$out/$1.pdf" "examples/pictures/$2"; }
page kestrels-bar-shapes-card coach-card
page kestrels-home-strong-shapes-sheet home-sheet
