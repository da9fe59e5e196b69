# Sourced by examples/run.sh and tests/run.sh: installs what is missing and builds into build/.
# Needs $root (the source folder). As root, or as a user who may use sudo; says what it does.

say() { printf '== %s\n' "$1"; }

install_missing() {
  missing=
  for package in "$@"; do
    if ! dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'install ok installed'; then
      missing="$missing $package"
    fi
  done
  if [ -z "$missing" ]; then
    say "every package that is needed is there"
    return
  fi
  as_root=
  if [ "$(id -u)" != 0 ]; then
    if ! command -v sudo >/dev/null; then
      say "there is no sudo here: as root, once: apt-get install --no-install-recommends$missing"
      exit 1
    fi
    as_root=sudo
  fi
  say "installing with apt-get, which takes some minutes:$missing"
  $as_root apt-get update -q
  # sudo keeps no variable: env sets it behind it.
  # shellcheck disable=SC2086
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing
}

build_packages='g++ cmake ninja-build pkg-config libcli11-dev nlohmann-json3-dev libfmt-dev
  libboost-dev libexpat1-dev libminizip-dev libxlsxwriter-dev liblemon-dev coinor-libcbc-dev
  zlib1g-dev libedit-dev libcairo2-dev libpango1.0-dev libqrcodegencpp-dev fonts-dejavu-core fonts-dejavu-extra'
test_packages='catch2 librapidcheck-dev libvalijson-dev python3 python3-openpyxl
  poppler-utils zbar-tools librsvg2-bin tmux zsh fish'

# build_program ON|OFF TARGET: with or without the tests; `all`, or what is needed of it.
build_program() {
  say "configuring and building (Release) in build/"
  cmake -S "$root" -B "$root/build" -G Ninja -DCMAKE_BUILD_TYPE=Release \
    -DCUTBACK_BUILD_TESTS="$1" -DCUTBACK_WERROR=ON -DCUTBACK_TOGETHER=ON || exit 1
  cmake --build "$root/build" --target "$2"
}
