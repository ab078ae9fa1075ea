#!/bin/sh
# sh tests/format.sh: every C++ source must be as clang-format leaves it (.clang-format). Pinned to version
# 14, Debian 12's: other versions break some lines elsewhere.
set -u
cd "$(dirname "$0")/.." || exit 2
formatter=clang-format
command -v clang-format-14 >/dev/null 2>&1 && formatter=clang-format-14
$formatter --version
find ui fonts sim tests \( -name '*.cpp' -o -name '*.hpp' -o -name '*.h' \) -print0 |
    xargs -0 "$formatter" --dry-run --Werror
