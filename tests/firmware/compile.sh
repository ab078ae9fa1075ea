#!/bin/sh
# sh tests/firmware/compile.sh DIRECTORY: every header and source of ui/ through avr-g++ without a warning,
# each header alone; then the engine is linked, and its flash and RAM held against budgets.
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

# The whole engine with the polled SPI driver, and the engine that only draws a number: bytes of flash and
# of static RAM that they may take. Who raises a budget says in the commit what was bought with it.
pinned_flags=$(sed -n 's/^ *"\(-std=.*\)";$/\1/p' sim/emit/compiler_flags.hpp)
[ -n "$pinned_flags" ] || { echo "sim/emit/compiler_flags.hpp: no flags found" >&2; exit 1; }
weigh() {
    name=$1 parts=$2 flash_budget=$3 ram_budget=$4
    elf=$out/$name.elf
    # shellcheck disable=SC2086  # many flags
    if ! avr-g++ $pinned_flags -Wall -Wextra -Werror -I. -mmcu=atmega328p -DF_CPU=16000000UL \
        -DPARTS="$parts" -DPIXEL=2 -DDRIVER=1 tests/firmware/engine_size.cpp -o "$elf"; then
        status=1
        return
    fi
    # text, data, bss
    # shellcheck disable=SC2046  # three numbers
    set -- $(avr-size "$elf" | tail -n 1)
    flash=$(($1 + $2)) ram=$(($2 + $3))
    echo "$name: flash $flash of $flash_budget bytes, RAM $ram of $ram_budget bytes"
    [ "$flash" -le "$flash_budget" ] || { echo "$name: flash is over its budget" >&2; status=1; }
    [ "$ram" -le "$ram_budget" ] || { echo "$name: RAM is over its budget" >&2; status=1; }
}
# Bits of tests/firmware/chosen_parts.hpp: all 25; those for one bit and whole cells, that is without context, tones and
# changed runs; readout, runs and tuning digit.
weigh whole-engine 0x1FFFFFF 20500 160
weigh one-bit-engine 0xFFFFF 15500 160
# Prologues as calls cost the small engine 120 bytes and save the whole one 950.
weigh readout-only 0x241 6100 160
exit $status
