#!/bin/sh
# The benchmarks: sh tests/bench/run.sh [--full]. Builds optimised, makes its clubs in build/bench. --full adds the
# club of 10,000 plans (minutes). Run it on a quiet machine; compare ratios, not single figures.
set -eu
cd "$(dirname "$0")/../.."
.ci/setup test
[ -f build/build.ninja ] && grep -q '^BUILD_TESTING:[A-Z]*=ON' build/CMakeCache.txt || cmake --preset tests >/dev/null
cmake --build --preset tests -- --quiet chalkleaf bench_passes bench_figures
python3 tests/bench/bench.py build/chalkleaf . build/bench "$@"
build/tests/bench/bench_passes build/chalkleaf build/bench/club-100 build/bench/out-passes
build/tests/bench/bench_figures themes/figures/*.yaml | tail -1
