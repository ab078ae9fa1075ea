#!/bin/sh
# sh tests/firmware/compile.sh DIRECTORY: every header and source of ui/ through avr-g++ without a warning,
# each header alone; then the size probe, whose flash and RAM are printed and held against a budget.
set -u
cd "$(dirname "$0")/../.." || exit 2
out=${1:-build/firmware}
mkdir -p "$out"
compile() {
    avr-g++ -DF_CPU=16000000UL -std=c++14 -Os -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror \
        -ffunction-sections -fdata-sections -fno-exceptions -fno-rtti -I. "$@"
}
status=0

avr-g++ --version | head -n 1
for mcu in atmega328p atmega2560; do
    count=0
    for file in $(find ui -name '*.hpp' -o -name '*.h' | sort); do
        printf '#include "%s"\n' "$file" |
            compile -mmcu=$mcu -fsyntax-only -x c++ - || { echo "$file: fails for $mcu" >&2; status=1; }
        count=$((count + 1))
    done
    for file in $(find ui -name '*.cpp' | sort); do
        compile -mmcu=$mcu -c "$file" -o "$out/$(echo "$file" | tr / _).$mcu.o" ||
            { echo "$file: fails for $mcu" >&2; status=1; }
        count=$((count + 1))
    done
    echo "$mcu: $count files of ui/ compiled"
done

# Bytes that the probe may take in flash and, statically, in RAM; see size_probe.cpp for what it holds.
flash_budget=9000
ram_budget=400
probe=tests/firmware/size_probe.cpp
if [ -f "$probe" ]; then
    if compile -mmcu=atmega328p -Wl,--gc-sections "$probe" -o "$out/size_probe.elf"; then
        avr-size "$out/size_probe.elf"
        set -- $(avr-size "$out/size_probe.elf" | tail -n 1)
        flash=$(($1 + $2))
        ram=$(($2 + $3))
        echo "size probe: flash $flash of $flash_budget bytes, RAM $ram of $ram_budget bytes"
        [ "$flash" -le "$flash_budget" ] || { echo "flash is over budget" >&2; status=1; }
        [ "$ram" -le "$ram_budget" ] || { echo "RAM is over budget" >&2; status=1; }
    else
        status=1
    fi
fi
exit $status
