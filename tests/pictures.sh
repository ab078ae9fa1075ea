#!/bin/sh
# sh tests/pictures.sh: takes the pictures of README.md anew, into layouts/pictures/. Look at each of them
# before it is committed. Needs a built program, Xvfb, xdotool and ImageMagick.
set -eu
cd "$(dirname "$0")/.." || exit 2
program=${1:-build/sim/dialplate}
pictures=layouts/pictures
mkdir -p "$pictures"

for example in coast-listener pocket-broadcast trail-cw bench-standard crowded; do
    "$program" shot "layouts/$example.json" -o "$pictures/$example.png"
done
"$program" shot layouts/coast-listener.json --page bands -o "$pictures/coast-listener-bands.png"

# photograph FILE PROGRAM: the window on the first example, on a screen of its own.
photograph='
    "$2" try --still layouts/coast-listener.json &
    window=
    while [ -z "$window" ]; do
        sleep 0.2
        window=$(xdotool search --onlyvisible --name dialplate || true)
    done
    xdotool mousemove 0 0
    sleep 3
    import -silent -window "$window" "$1"
    kill $!
'
xvfb-run -a -s '-screen 0 1600x1000x24 -noreset' sh -c "$photograph" sh "$pictures/window.png" "$program"
for picture in "$pictures"/*.png; do
    convert "$picture" -strip -define png:compression-level=9 "$picture"
done
ls -l "$pictures"
