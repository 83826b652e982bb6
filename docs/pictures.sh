#!/usr/bin/env bash
# Makes the pictures of the README from the demo. Needs Chromium, Poppler, librsvg.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go run ./cmd/axlewright demo --once "$work/demo" >/dev/null
rsvg-convert -w 1100 -o docs/pictures/ladder.png "$work/demo/ladder.svg"
rsvg-convert -w 900 -o docs/pictures/peg.png "$work/demo/peg.svg"
chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking \
  --disable-component-update --disable-sync --user-data-dir="$work/profile" \
  --no-pdf-header-footer --print-to-pdf="$work/sheet.pdf" "file://$work/demo/advice.html" >/dev/null 2>&1
pdftoppm -r 90 -png -singlefile "$work/sheet.pdf" docs/pictures/sheet
