#!/usr/bin/env bash
# Installs what is missing, builds the program, runs the demo case and says where its pictures are.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash cases/install_packages.sh
cmake -S . -B .build/release -G Ninja -DCMAKE_BUILD_TYPE=Release -DGAPSTRAIN_TESTS=OFF >/dev/null
echo "Building: some 50 steps, four to five minutes on two idle cores"
cmake --build .build/release --parallel "$(nproc)" --target gapstrain
.build/release/cases/gapstrain analyse cases/examples/comminuted_radius.toml --out .build/demo

echo
echo "Findings: .build/demo/findings.json"
echo "Pictures:"
find .build/demo/pictures -type f | sort | sed 's/^/  /'
