#!/usr/bin/env bash
# Takes pictures of a report's page as a browser shows it: desktop and phone width, light and dark, and as pages of a PDF.
# Needs chromium and pdftoppm (poppler-utils). Usage: docs/pictures/take.sh REPORT.html DIR
set -euo pipefail
page=$(realpath "$1") out=$2
mkdir -p "$out"
browse() { timeout 120 chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$profile" "$@" "file://$page" > /dev/null 2>&1; }
profile=$(mktemp -d)
trap 'rm -rf "$profile"' EXIT

# A headless window is never narrower than 500 pixels: a phone's width is that of a frame in a page of its own.
phone=$profile/phone.html
printf '<!DOCTYPE html><body style="margin:0"><iframe src="file://%s" style="width:390px;height:%spx;border:0"></iframe>' "$page" "${PHONE_HEIGHT:-16000}" > "$phone"

browse --screenshot="$out/desktop-light.png" --window-size="1280,${DESKTOP_HEIGHT:-12000}"
browse --screenshot="$out/desktop-dark.png" --window-size="1280,${DESKTOP_HEIGHT:-12000}" --blink-settings=preferredColorScheme=0
report=$page page=$phone
browse --screenshot="$out/phone-light.png" --window-size="500,${PHONE_HEIGHT:-16000}"
browse --screenshot="$out/phone-dark.png" --window-size="500,${PHONE_HEIGHT:-16000}" --blink-settings=preferredColorScheme=0
page=$report
browse --print-to-pdf="$out/report.pdf" --no-pdf-header-footer
pdftoppm -r 60 -png "$out/report.pdf" "$out/page"
