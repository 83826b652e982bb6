#!/usr/bin/env bash
# Makes the pictures of the README from the demo. Needs Poppler, librsvg.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go run ./cmd/axlewright demo --once "$work/demo" >/dev/null
rsvg-convert -w 1100 -o docs/pictures/ladder.png "$work/demo/ladder.svg"
rsvg-convert -w 900 -o docs/pictures/peg.png "$work/demo/peg.svg"
pdftoppm -r 90 -png -singlefile "$work/demo/advice.pdf" docs/pictures/sheet
