#!/usr/bin/env bash
# Runs what is labelled "page": the page's core under Node against the program itself, and the page in a real browser.
# Installs what is missing: Node, Chromium (Debian) and, from npm, what drives it (versions: tests/page/browser).
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash cases/install_packages.sh
command -v node >/dev/null || bash cases/install_packages.sh nodejs
command -v npm >/dev/null || bash cases/install_packages.sh npm
command -v chromium >/dev/null || bash cases/install_packages.sh chromium
mkdir -p .build/page_modules
cp tests/page/browser/package.json tests/page/browser/package-lock.json .build/page_modules
npm ci --prefix .build/page_modules --silent
cmake -S . -B .build/release -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build .build/release --parallel "$(nproc)" --target gapstrain
ctest --test-dir .build/release --output-on-failure --label-regex page --timeout 2400
