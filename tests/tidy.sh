#!/usr/bin/env bash
# Holds the sources against .clang-format and .clang-tidy.
#   tests/tidy.sh                     all files
#   tests/tidy.sh --changed [COMMIT]  clang-tidy only over what changed since COMMIT, or since the branch left main
#                                     (on main: in the last commit)
#   tests/tidy.sh --fix               and mends what can be mended by machine
# clang-tidy walks all of Eigen and Boost for each file it is given, whose own lines are nothing beside that: so it gets
# one file a layer, which includes those to be checked (names in unnamed namespaces are unique within a target).
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

mode=${1:-all}
since=${2:-}
build=.build/release
work=.build/tidy
case "$mode" in
  all | --changed | --fix) ;;
  *) echo "usage: tests/tidy.sh [--changed [COMMIT] | --fix]" >&2; exit 2 ;;
esac

mapfile -t formatted < <(git ls-files --cached --others --exclude-standard '*.h' '*.cpp')
if [ "$mode" = --fix ]; then
  clang-format -i "${formatted[@]}"
else
  clang-format --dry-run --Werror "${formatted[@]}"
fi

# Files to be checked, headers that no file of theirs includes among them.
files() {
  if [ "$mode" = --changed ]; then
    local base=$since
    if [ -z "$base" ]; then
      base=$(git merge-base HEAD origin/main 2>/dev/null || git merge-base HEAD main 2>/dev/null || true)
      if [ -z "$base" ] || [ "$base" = "$(git rev-parse HEAD)" ]; then base=HEAD~1; fi
    fi
    git diff --name-only --diff-filter=d "$base" -- "$1/*.h" "$1/*.cpp"
    git ls-files --others --exclude-standard "$1/*.h" "$1/*.cpp"
  else
    git ls-files --cached --others --exclude-standard "$1/*.h" "$1/*.cpp"
  fi | sort -u
}

# What a target of the build is compiled with, as far as it is a matter of what is read.
flags_of() {
  grep -m1 "\"command\".*/gapstrain_$1\.dir/" "$build/compile_commands.json" | sed 's/\\\\\\"/\\"/g' |
    grep -oE -- '-(D|I|isystem )[^ ]+'
}

if [ ! -f "$build/compile_commands.json" ]; then
  cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
fi
rm -rf "$work"
mkdir -p "$work"

# $1 target, $2 name, then the files that are to be read as one
put_together() {
  local target=$1 name=$2
  shift 2
  [ $# -gt 0 ] || return 0
  printf '#include "%s"\n' "$@" >"$work/$name.cpp"
  flags_of "$target" | tr '\n' ' ' >"$work/$name.flags"
}
for layer in mesh solver/bodies solver/native solver/plain models viz cases; do
  mapfile -t of_layer < <(files "$layer")
  put_together "$(basename "${layer/bodies/}")" "${layer//\//_}" "${of_layer[@]}"
done
# Elements share names on purpose; their headers are in their files.
mapfile -t elements < <(files solver/elements | grep '\.cpp$')
for file in "${elements[@]}"; do put_together elements "$(basename "${file//./_}")" "$file"; done

check() {
  local name
  name=$(basename "$1" .cpp)
  local -a flags fix=()
  eval "flags=($(cat "${1%.cpp}.flags"))"
  if [ "$2" = --fix ]; then fix=(--fix); fi
  # GCC's warnings are the compiler's matter.
  if ! clang-tidy --quiet "${fix[@]}" "$1" -- -std=c++20 -w "${flags[@]}" -I. >"$1.out" 2>"$1.err"; then
    cat "$1.out"
    grep -v 'warnings\? generated\|^Suppressed\|^Use -header' "$1.err" >&2 || true
    return 1
  fi
  echo "clang-tidy: $name is clean"
}
export -f check
find "$work" -name '*.cpp' -printf '%s %p\n' | sort -rn | cut -d' ' -f2- |
  xargs --no-run-if-empty -P "$(nproc)" -I{} bash -c 'check "$1" "$2"' _ {} "$mode"
