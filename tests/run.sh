#!/usr/bin/env bash
# Installs what is missing, builds everything and runs every test.
#   tests/run.sh              the whole suite, but for what is labelled "slow", or "page" (tests/page.sh)
#   tests/run.sh --slow       the slow proofs only
#   tests/run.sh --sanitized  the suite without pictures, comparisons with solids and figures of many whole constructs,
#                             built with the address and undefined-behaviour sanitizers
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

mode=${1:-all}
targets=(all)
bash cases/install_packages.sh
case "$mode" in
  all) build=.build/release; options=(-DCMAKE_BUILD_TYPE=Release); select=(--label-exclude 'slow|page') ;;
  --slow) build=.build/release; options=(-DCMAKE_BUILD_TYPE=Release); select=(--label-regex slow) ;;
  --sanitized)
    build=.build/sanitized
    options=(-DCMAKE_BUILD_TYPE=Sanitized "-DCMAKE_CXX_FLAGS_SANITIZED=-O1 -g1" -DGAPSTRAIN_SANITIZE=ON)
    select=() targets=(tests_to_run)
    # Gmsh and VTK keep global objects to the end; their own leaks are not ours.
    export ASAN_OPTIONS=detect_leaks=0 ;;
  *) echo "usage: tests/run.sh [--slow | --sanitized]" >&2; exit 2 ;;
esac
cmake -S . -B "$build" -G Ninja -DGAPSTRAIN_TESTS=ON "${options[@]}" >/dev/null
cmake --build "$build" --parallel "$(nproc)" --target "${targets[@]}"
# No test is that slow: past the time limit it hangs, and says in which case.
ctest --test-dir "$build" --output-on-failure --parallel "$(nproc)" --timeout 2400 "${select[@]}"
