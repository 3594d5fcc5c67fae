#!/bin/sh
# All tests: installs what is missing, compiles, runs everything. Quick when run again with nothing changed.
#
#   sh tests/run.sh            everything
#   sh tests/run.sh quick      only the optimised build's tests, no sanitizers and no style checks
set -eu
cd "$(dirname "$0")/.."
.ci/setup test
jobs=$(nproc)

# Configures a preset once, builds it, and says what it is doing.
build() {
  preset=$1
  folder=$2
  shift 2
  echo "== $preset: build"
  [ -f "$folder/build.ninja" ] && grep -q '^BUILD_TESTING:[A-Z]*=ON' "$folder/CMakeCache.txt" ||
    cmake --preset "$preset" >/dev/null
  cmake --build --preset "$preset" -- --quiet "$@"
}

build tests build
echo "== tests: the whole suite"
ctest --preset tests --parallel "$jobs" --progress
[ "${1:-}" = quick ] && exit 0

# The rooms that read untrusted bytes, and the whole program on the demo club, under the sanitizers.
build asan-ubsan build-asan
echo "== asan-ubsan: core suites"
ctest --preset asan-ubsan --parallel "$jobs" --progress -L core
build tsan build-tsan chalkleaf test_club
echo "== tsan: many workers on one club"
ctest --preset tsan --progress -L threads

echo "== style"
sh tests/style.sh
