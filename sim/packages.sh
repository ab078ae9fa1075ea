# What a Debian machine needs, and how to get it: read by sim/run and tests/run (`. sim/packages.sh`).
# POSIX sh.

# To build and run.
packages_to_build='g++ cmake ninja-build pkg-config libsdl2-dev libsdl2-ttf-dev libimgui-dev libpng-dev
libfreetype-dev nlohmann-json3-dev libcli11-dev libgtest-dev libgmock-dev libbenchmark-dev
fonts-dejavu-core'

# To test, besides. COMMAND=PACKAGE: only when the command is not there, whoever brought it.
packages_to_test='clang-format=clang-format clang++=clang libclang-rt-dev avr-g++=gcc-avr avr-libc libsimavr-dev
arm-none-eabi-g++=gcc-arm-none-eabi qemu-system-arm=qemu-system-arm
arduino-core-avr fonts-liberation fonts-b612 zopfli=zopfli xz=xz-utils brotli=brotli
libx11-dev libxext-dev Xvfb=xvfb xvfb-run=xvfb xdotool=xdotool node=nodejs npm=npm'

# Prints those of the packages named that are missing.
missing_packages() {
    for wanted in "$@"; do
        case $wanted in
        *=*) command -v "${wanted%%=*}" >/dev/null 2>&1 || printf '%s ' "${wanted#*=}" ;;
        *)
            dpkg-query -W -f='${db:Status-Status}\n' "$wanted" 2>/dev/null |
                grep -qx installed || printf '%s ' "$wanted"
            ;;
        esac
    done
}

# Installs those of the packages named that are missing; says what to do where it cannot.
need_packages() {
    if ! command -v dpkg-query >/dev/null 2>&1; then
        echo "This is not a Debian system: install the equivalents of these yourself, if they are missing:" >&2
        echo "  $*" | sed 's/[^ ]*=//g' >&2
        return 0
    fi
    missing=$(missing_packages "$@")
    [ -n "$missing" ] || return 0

    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        if command -v sudo >/dev/null 2>&1; then
            as_root=sudo
        else
            echo "error: missing packages, and neither root nor sudo to install them. As root:" >&2
            echo "  apt-get install $missing" >&2
            return 1
        fi
    fi
    if ! command -v apt-get >/dev/null 2>&1; then
        echo "error: missing packages, and no apt-get to install them: $missing" >&2
        return 1
    fi
    echo "installing: $missing"
    # The lists may be absent (a new container) or old: fetch them first; go on with the old ones if that fails.
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y update >/dev/null ||
        echo "warning: apt-get update failed; trying with the lists there are" >&2
    # shellcheck disable=SC2086  # a list of words
    if ! $as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get -q -y install --no-install-recommends $missing >/dev/null; then
        echo "error: apt-get could not install: $missing" >&2
        return 1
    fi
}

# configure DIRECTORY [CMAKE-ARGUMENT...]: prepares a build directory, with Ninja unless it already has
# another generator.
configure() {
    directory=$1
    shift
    [ -f "$directory/CMakeCache.txt" ] || set -- -G Ninja "$@"
    cmake -S . -B "$directory" "$@"
}
