#!/bin/sh
# All tests: installs what is missing, compiles, runs everything. A stage whose sources and tools are the same as when
# it last passed is not run again.
#
#   sh tests/run.sh            everything
#   sh tests/run.sh quick      only the optimised build's tests, no sanitizers and no style checks
set -eu
cd "$(dirname "$0")/.."
.ci/setup test
jobs=$(nproc)

# Every byte of the tree that git knows or would know, and the version of every package used.
everything=$({
  git ls-files -z --cached --others --exclude-standard | xargs -0 sha256sum 2>/dev/null || true
  awk '/^[^#]/ { print $2 }' .ci/packages | xargs dpkg-query -W
} | sha256sum | cut -d ' ' -f 1)

# stage NAME FOLDER COMMAND…: runs the command unless it passed with exactly this tree.
stage() {
  name=$1
  passed=$2/passed-$1
  shift 2
  if [ "$(cat "$passed" 2>/dev/null)" = "$everything" ]; then
    echo "== $name: nothing has changed since it passed"
    return
  fi
  echo "== $name"
  "$@"
  echo "$everything" >"$passed"
}

# build PRESET FOLDER [TARGETS…]: configures a preset once and when the presets change, and builds it.
build() {
  preset=$1
  folder=$2
  shift 2
  grep -qs '^BUILD_TESTING:[A-Z]*=ON' "$folder/CMakeCache.txt" && [ "$folder/build.ninja" -nt .ci/presets.json ] ||
    cmake --preset "$preset" >/dev/null
  cmake --build --preset "$preset" -- --quiet "$@"
}

suite() {
  build tests build
  ctest --preset tests --parallel "$jobs" --progress
}

# Everything that reads untrusted bytes, the whole program on every case, and the demo club. clang, because GCC 12 takes
# Catch2 under its sanitizers for a use of uninitialised memory.
asan_ubsan() {
  build asan-ubsan build-asan
  ctest --preset asan-ubsan --parallel "$jobs" --progress -L core
}

# Many workers on one club.
tsan() {
  build tsan build-tsan chalkleaf test_club
  ctest --preset tsan --parallel "$jobs" --progress -L threads
}

stage suite build suite
[ "${1:-}" = quick ] && exit 0
stage asan-ubsan build-asan asan_ubsan
stage tsan build-tsan tsan
stage style build sh tests/style.sh
