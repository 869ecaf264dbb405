#!/usr/bin/env bash
# Runs what is labelled "page": the page's core under Node against the program itself, and the page in a real browser.
# Installs what is missing: Node, Chromium, Firefox, a display for it and what reads a PDF (Debian) and, from npm, what drives
# them (versions: tests/page/browser). PAGE_STATES=50: as many random states; PAGE_PARTS=hands,print: only these parts.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash cases/install_packages.sh
command -v node >/dev/null || bash cases/install_packages.sh nodejs
command -v npm >/dev/null || bash cases/install_packages.sh npm
command -v chromium >/dev/null || bash cases/install_packages.sh chromium
command -v firefox-esr >/dev/null || bash cases/install_packages.sh firefox-esr
command -v xauth >/dev/null || bash cases/install_packages.sh xauth
command -v pdftotext >/dev/null || bash cases/install_packages.sh poppler-utils
mkdir -p .build/page_modules
cp tests/page/browser/package.json tests/page/browser/package-lock.json .build/page_modules
npm ci --prefix .build/page_modules --silent
cmake -S . -B .build/release -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build .build/release --parallel "$(nproc)" --target gapstrain
ctest --test-dir .build/release --output-on-failure --label-regex page --timeout 2400
