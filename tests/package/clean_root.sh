#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs the Debian package into a new, bare Debian root and packs sample kits there, as somebody who has nothing else.
# Usage: tests/package/clean_root.sh build/tuckwright_*.deb [FOLDER]   as root, with a Debian mirror in reach.
# Exit status 77: debootstrap is missing, or this is not root, so nothing was tried.
set -euo pipefail
deb=$(readlink -f "$1")
root=${2:-$(mktemp -d)}
if [ "$(id -u)" != 0 ] || ! command -v debootstrap > /dev/null; then
  echo 'SKIPPED: the package is NOT tried, which takes root and debootstrap'
  exit 77
fi
[ -e "$root/etc/debian_version" ] || debootstrap --variant=minbase bookworm "$root" > "$root.log" ||
  { tail -5 "$root.log"; exit 1; }
rm -rf "$root"/tmp/*
cp "$deb" "$root/tmp/tuckwright.deb"

in_root() { chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 "$@"; }

in_root apt-get update -qq
in_root apt-get install -y -qq --reinstall --no-install-recommends /tmp/tuckwright.deb > "$root.log" 2>&1 || { tail -20 "$root.log"; exit 1; }
in_root dpkg --verify tuckwright
in_root tuckwright --version
cd /tmp
kits=/usr/share/tuckwright/kits
in_root tuckwright pack $kits/porridge-canal.yaml --effort quick --json /tmp/porridge.json | sed -n 1p
in_root tuckwright verify /tmp/porridge.json --kit $kits/porridge-canal.yaml | sed -n 1p
in_root tuckwright card /tmp/porridge.json --pdf /tmp/porridge.pdf -q
in_root tuckwright new /tmp/mine.yaml --schema -q
in_root tuckwright pack /tmp/mine.yaml --effort quick | sed -n 1p
for file in /tmp/porridge.pdf /usr/share/man/man1/tuckwright.1 /usr/share/bash-completion/completions/tuckwright \
            $kits/kit.schema.json $kits/shelf.schema.json; do
  [ -s "$root$file" ] || { echo "$file is missing"; exit 1; }
done
if in_root tuckwright look /tmp/porridge.json --html /tmp/porridge.html -q --without-room; then
  echo 'the picture to turn is part of it'
else
  echo 'the picture to turn was left out of this build'
fi
echo "installed and tried in $root"
