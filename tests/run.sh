#!/bin/sh
# All tests: installs what is missing, compiles, runs everything. A stage whose sources and tools are the same as when
# it last passed is not run again. At the end stands how long each took.
#
#   sh tests/run.sh            everything that belongs before a commit: at most ten minutes on two cores
#   sh tests/run.sh quick      all tests in the optimised build only: no sanitizers and no style checks
#   sh tests/run.sh nightly    everything, and then what takes longer (DEVELOPERS.md says what and why)
set -eu
cd "$(dirname "$0")/.."
case "${1:-all}" in
  all | quick | nightly) what=${1:-all} ;;
  *) sed -n '2,8s/^# \{0,1\}//p' "$0" >&2; exit 2 ;;
esac
.ci/setup test
jobs=$(nproc)

# Every byte of the tree that git knows or would know, and the version of every package used.
everything=$({
  git ls-files -z --cached --others --exclude-standard | xargs -0 sha256sum 2>/dev/null || true
  awk '/^[^#]/ { print $2 }' .ci/packages | xargs dpkg-query -W
} | sha256sum | cut -d ' ' -f 1)

# The minutes of each step, printed however the run ends.
minutes=''
began=$(date +%s)
spent() {
  awk -v name="$1" -v seconds="$2" 'BEGIN { printf "%8.1f min  %s\n", seconds / 60, name }'
}
report() {
  printf '%s' "$minutes"
  spent 'in all' $(($(date +%s) - began))
}
trap report EXIT

# timed NAME COMMAND…: runs the command and notes how long it took.
timed() {
  name=$1
  shift
  start=$(date +%s)
  "$@"
  minutes="$minutes$(spent "$name" $(($(date +%s) - start)))
"
}

# stage NAME FOLDER COMMAND…: runs the command unless it passed with exactly this tree.
stage() {
  stage=$1
  passed=$2/passed-$1
  shift 2
  if [ "$(cat "$passed" 2>/dev/null)" = "$everything" ]; then
    echo "== $stage: nothing has changed since it passed"
    return
  fi
  echo "== $stage"
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

# One test more than there are cores: some wait, for a terminal or for a program to be killed.
at_once=$((jobs + 1))

# The program from outside. The rooms' own tests (label `core`) run under the sanitizers, where they tell more.
suite() {
  timed 'suite: compiling' build tests build suite
  timed 'suite: running' ctest --preset tests --parallel "$at_once" --progress -LE '^core$'
}

# All of it in the optimised build.
whole() {
  timed 'whole suite: compiling' build tests build
  timed 'whole suite: running' ctest --preset tests --parallel "$at_once" --progress
}

# The tests of every room, everything that reads untrusted bytes, the whole program on every case and the demo club. clang, because GCC 12 takes
# Catch2 under its sanitizers for a use of uninitialised memory.
asan_ubsan() {
  timed 'sanitizers: compiling' build asan-ubsan build-asan core
  timed 'sanitizers: running' ctest --preset asan-ubsan --parallel "$at_once" --progress -L '^(core|both)$'
}

# Whatever starts threads, and many workers on one club.
tsan() {
  timed 'threads: compiling' build tsan build-tsan threads
  timed 'threads: running' ctest --preset tsan --parallel "$jobs" --progress -L '^threads$'
}

style() {
  timed 'style' sh tests/style.sh
}

# What the other stages leave out, for its time.
nightly() {
  export CHALKLEAF_ALL_ROUNDS=1 # of what the other stages try only an eighth, or one error code in turn
  timed 'nightly: sanitizers' ctest --preset asan-ubsan --parallel "$jobs" --progress -L '^(core|both|late)$'
  unset CHALKLEAF_ALL_ROUNDS
  whole
  export CHALKLEAF_ALL_ROUNDS=1
  timed 'nightly: injected faults' ctest --preset tests --progress -R faults_test
  unset CHALKLEAF_ALL_ROUNDS
  timed 'nightly: every source alone' tests/tidy.py --alone
  timed 'nightly: mutants' tests/mutants.py
}

if [ "$what" = quick ]; then
  stage whole build whole
  exit 0
fi
stage suite build suite
stage asan-ubsan build-asan asan_ubsan
stage tsan build-tsan tsan
stage style build style
[ "$what" = nightly ] || exit 0
stage nightly build nightly
