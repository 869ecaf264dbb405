#!/usr/bin/env bash
# Runs what is labelled "page": the page's core under Node against the program itself. Installs what is missing.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash cases/install_packages.sh
command -v node >/dev/null || bash cases/install_packages.sh nodejs
cmake -S . -B .build/release -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build .build/release --parallel "$(nproc)" --target gapstrain
ctest --test-dir .build/release --output-on-failure --label-regex page --timeout 2400
