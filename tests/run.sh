#!/bin/sh
# Installs what is missing, builds with the tests, and runs all of them.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
. "$root/src/cmake/setup.sh"

# shellcheck disable=SC2086
install_missing $build_packages $test_packages
build_program ON all
say "running the tests"
cd "$root/build"
exec ctest --output-on-failure --no-tests=error -j "$(nproc)"
