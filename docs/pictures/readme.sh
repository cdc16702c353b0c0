#!/usr/bin/env bash
# Renews the README's two pictures: the console in a real terminal, and the head of the example report's page. Use:
# docs/pictures/readme.sh [PROGRAM], in the repository. Needs tmux, awk, chromium.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(realpath "${1:-src/AxleRisk.App/bin/Release/net10.0/axlerisk}")
work=$(mktemp -d)
on_screen() { tmux -L "axlerisk-readme-$$" "$@"; }
trap 'on_screen kill-server 2> /dev/null || true; rm -rf "$work"' EXIT
unset TMUX NO_COLOR
export LC_ALL=C.UTF-8

cp -r scenarios "$work"
on_screen -f /dev/null new-session -d -x 118 -y 34 -c "$work" "'$program' console scenarios/warranty-clinic-van.toml"
for _ in $(seq 100); do
    if on_screen capture-pane -p | grep '^Done: ' > /dev/null; then break; fi
    sleep 0.1
done
sleep 0.5
on_screen capture-pane -p | grep '^Done: ' > /dev/null

# The terminal's codes of colour as a page.
on_screen capture-pane -e -p | awk '
    BEGIN {
        split("000000 cd3131 0dbc79 e5e510 2472c8 bc3fbc 11a8cd d0d0d0 " \
            "767676 f14c4c 23d18b f5f543 3b8eea d670d6 29b8db ffffff", colour, " ")
        front = "d0d0d0"; back = "000000"; weight = "normal"
        print "<!DOCTYPE html><meta charset=utf-8><style>body { margin: 0; background: #000 }"
        print "pre { margin: 8px; font: 15px/18px DejaVu Sans Mono, monospace }"
        print "i { display: inline-block; width: 1ch; overflow: hidden; vertical-align: top; font-style: normal }</style><pre>"
    }
    function set(code) {
        if (code == 0) { front = "d0d0d0"; back = "000000"; weight = "normal"; turned = 0 }
        else if (code == 1) weight = "bold"
        else if (code == 22) weight = "normal"
        else if (code == 7) turned = 1
        else if (code == 27) turned = 0
        else if (code >= 30 && code <= 37) front = colour[code - 29]
        else if (code == 39) front = "d0d0d0"
        else if (code >= 40 && code <= 47) back = colour[code - 39]
        else if (code == 49) back = "000000"
        else if (code >= 90 && code <= 97) front = colour[code - 81]
        else if (code >= 100 && code <= 107) back = colour[code - 91]
    }
    function put(s) {
        if (s == "") return
        gsub(/&/, "\\&amp;", s); gsub(/</, "\\&lt;", s)
        gsub(/\342[\240-\243][\200-\277]/, "<i>&</i>", s) # patterns of dots, which come from a font of another width
        printf "<span style=\"color:#%s;background:#%s;font-weight:%s\">%s</span>", turned ? back : front, turned ? front : back, weight, s
    }
    {
        line = $0
        while (match(line, /\033\[[0-9;]*m/)) {
            put(substr(line, 1, RSTART - 1))
            codes = substr(line, RSTART + 2, RLENGTH - 3)
            line = substr(line, RSTART + RLENGTH)
            n = split(codes == "" ? "0" : codes, part, ";")
            for (i = 1; i <= n; i++) set(part[i] + 0)
        }
        put(line)
        print ""
    }
    END { print "</pre>" }' > "$work/console.html"

browse() { # browse PAGE PICTURE SIZE
    timeout 120 chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$work/profile" \
        --screenshot="$2" --window-size="$3" "file://$1" > /dev/null 2>&1
}
browse "$work/console.html" "$PWD/docs/pictures/console.png" 1084,628
browse "$PWD/reports/example/report/report.html" "$PWD/docs/pictures/report.png" 1000,900
ls -l docs/pictures/*.png
