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

# The views of one glass: an eye of half the acuity, the light of a bright day, no long-wave cones, and the
# finger behind the front panel.
views=$(mktemp -d)
trap 'rm -rf "$views"' EXIT
view() {
    name=$1
    shift
    "$program" shot layouts/coast-listener.json --zoom 2 -o "$views/$name.png" "$@"
}
view 1 --eye 700 --acuity 0.5
view 2 --lux 8000
view 3 --vision protan
view 4 --bezel --finger
montage "$views"/[1-4].png -tile 2x2 -geometry +4+4 -background '#24282C' "$pictures/views.png"

# photograph FILE PROGRAM: the window on the first example, its frequency chosen, on a screen of its own.
photograph='
    "$2" try --still layouts/coast-listener.json &
    window=
    while [ -z "$window" ]; do
        sleep 0.2
        window=$(xdotool search --onlyvisible --name dialplate || true)
    done
    xdotool mousemove 0 0
    xdotool windowfocus --sync "$window" key F3 key n key n
    sleep 3
    import -silent -window "$window" "$1"
    kill $!
'
xvfb-run -a -s '-screen 0 1600x1000x24 -noreset' sh -c "$photograph" sh "$pictures/window.png" "$program"
for picture in "$pictures"/*.png; do
    convert "$picture" -strip -define png:compression-level=9 "$picture"
done
ls -l "$pictures"
