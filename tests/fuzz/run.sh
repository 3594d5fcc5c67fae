#!/bin/sh
# Fuzzes one target for some seconds, from its corpus; what it finds is kept in build-fuzz/found.
# usage: tests/fuzz/run.sh TARGET SECONDS      TARGET: dose front_matter plan club picture figures
set -eu
target=$1
seconds=$2
cd "$(dirname "$0")/../.."
.ci/setup test >/dev/null
[ -f build-fuzz/build.ninja ] || cmake --preset fuzz >/dev/null
cmake --build --preset fuzz --target "fuzz_$target" -- --quiet
mkdir -p "build-fuzz/new/$target" build-fuzz/found
"build-fuzz/tests/fuzz/fuzz_$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -max_len=20000 \
  -dict="tests/fuzz/words.dict" -artifact_prefix="build-fuzz/found/$target-" -print_final_stats=1 \
  "build-fuzz/new/$target" "tests/fuzz/corpus/$target"
