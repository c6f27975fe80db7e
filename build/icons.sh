#!/usr/bin/env bash
# Makes the icons in PNG from wwwroot/icon.svg, with the Chromium that the browser tests use.
set -eu
ROOT=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$ROOT/src/Closemown.Pages/wwwroot"
for size in 192 512; do
  "${CLOSEMOWN_CHROMIUM:-chromium}" --headless --no-sandbox --disable-gpu --hide-scrollbars --force-device-scale-factor=1 \
    --window-size=$size,$size --screenshot="icon-$size.png" "file://$PWD/icon.svg" 2>/dev/null
done
