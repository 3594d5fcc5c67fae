#!/bin/sh
# What the compiler does not check: formatting, clang-tidy, the size of files, the top level, no machine's paths.
set -eu
cd "$(dirname "$0")/.."
fail=0

sources=$(git ls-files --cached --others --exclude-standard 'src/*.cpp' 'src/*.h' 'tests/*.cpp' 'tests/*.h')
# shellcheck disable=SC2086 # a list of files
clang-format --dry-run --Werror $sources || fail=1
tests/tidy.py || fail=1

for file in $sources; do
  lines=$(wc -l <"$file")
  if [ "$lines" -gt 500 ]; then
    echo "$file has $lines lines; split it (500 at most)"
    fail=1
  fi
done

extra=$(git ls-files | cut -d/ -f1 | sort -u |
  grep -v -E '^(\..*|CMakeLists\.txt|README\.md|DEVELOPERS\.md|src|themes|plans|fonts|tests|examples)$' || true)
if [ -n "$extra" ]; then
  echo "Top-level entries outside the agreed layout: $extra"
  fail=1
fi

if git grep -n -I -E '(^|[^a-zA-Z0-9_.])/(home|root|work|tmp)/[a-z]' -- ':!tests/style.sh'; then
  echo "These lines carry a path of one machine."
  fail=1
fi
exit "$fail"
