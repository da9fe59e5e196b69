#!/bin/sh
# reproducible.sh WORK: builds the package twice, from copies of the sources in folders of different
# length, with another time zone, locale and mask of permissions, and looks that both have the same bytes.
# WORK is written to. By hand: it takes two builds from nothing.
set -eu
work=$1
source=$(cd "$(dirname "$0")/../.." && pwd)
: "${SOURCE_DATE_EPOCH:=$(git -C "$source" log -1 --format=%ct)}"
export SOURCE_DATE_EPOCH
unset CCACHE_DIR

build() {  # its name, time zone, locale, mask
  rm -rf "${work:?}/$1"
  mkdir -p "$work/$1"
  (
    umask "$4"
    git -C "$source" archive HEAD | tar -x -C "$work/$1"
    cd "$work/$1"
    export TZ="$2" LC_ALL="$3"
    cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DCUTBACK_BUILD_TESTS=OFF \
      -DCUTBACK_TOGETHER=ON >cmake.log
    cmake --build build >build.log
    cd build && cpack >cpack.log
  )
}

build a UTC C 022
build a-much-longer-name Pacific/Auckland C.UTF-8 077
for deb in "$work"/a/build/*.deb; do
  other=$work/a-much-longer-name/build/${deb##*/}
  cmp "$deb" "$other"
  sha256sum "$deb" "$other"
done
echo "the same bytes: $(wc -c <"$deb")"
