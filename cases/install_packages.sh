#!/usr/bin/env bash
# Installs what the build needs from Debian, by name, where it is missing, and the packages named as arguments besides.
# Needs root only when something is missing.
set -euo pipefail

packages=(
  cmake g++ ninja-build
  libboost-dev libcairo2-dev libcereal-dev libcli11-dev libeigen3-dev libfmt-dev libgmsh-dev libopenblas-pthread-dev libopenmpi-dev
  libsuitesparse-dev libtomlplusplus-dev libvtk9-dev nlohmann-json3-dev openmpi-bin catch2
  fonts-liberation git libgl1-mesa-dri xvfb zlib1g-dev
  "$@"
)

missing=()
for package in "${packages[@]}"; do
  dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || missing+=("$package")
done
[ ${#missing[@]} -eq 0 ] && exit 0

if [ "$(id -u)" -ne 0 ]; then
  echo "Missing packages: ${missing[*]}" >&2
  echo "Install them as root: apt-get install --no-install-recommends ${missing[*]}" >&2
  exit 1
fi
echo "Installing ${missing[*]}"
export DEBIAN_FRONTEND=noninteractive
apt-get update --quiet=2
apt-get install --quiet=2 --yes --no-install-recommends "${missing[@]}" >/dev/null
