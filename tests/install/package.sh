#!/bin/sh
# package.sh DEB ROOT: installs the package in a bare root, uses it, removes it and looks that nothing
# stays behind. As root; ROOT is written to, and made by
#   debootstrap --variant=minbase bookworm ROOT http://deb.debian.org/debian
set -eu
deb=$1
root=$2
source=$(cd "$(dirname "$0")/../.." && pwd)
fail() { echo "package: $*" >&2; exit 1; }
inside() { chroot "$root" env DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin "$@"; }
# Not proven yet is an answer of the program, not a failure.
answers() { status=0; inside "$@" || status=$?; [ "$status" -le 1 ] || fail "status $status of $*"; }
starts_with() { [ "$(head -c "${#2}" "$root$1")" = "$2" ] || fail "$1 does not begin with $2"; }

mount -t proc proc "$root/proc"
trap 'umount "$root/proc"' EXIT
cp "$deb" "$root/tmp/cutback.deb"
rm -rf "$root/site" && mkdir "$root/site"
cp "$source"/data/demo/site/*.json "$source/data/demo/glands.csv" \
  "$source/examples/estimator/schedule.csv" "$root/site"
inside apt-get update -qq
inside apt-get install -y -qq --no-install-recommends /tmp/cutback.deb >/dev/null

inside cutback --version
answers cutback cards /site/pump-motor.json --glands /site/glands.csv --output /site/cards.pdf --quiet
starts_with /site/cards.pdf %PDF
answers cutback schedule /site/schedule.csv --glands /site/glands.csv --output /site/results.csv \
  --xlsx /site/schedule.xlsx
starts_with /site/schedule.xlsx PK
cmp "$root/site/results.csv" "$source/examples/estimator/results.csv" || fail "other results than the example's"

# From a moved prefix, with the package gone. A minimal Debian root leaves manual pages out.
inside dpkg -x /tmp/cutback.deb /opt/moved
[ -f "$root/opt/moved/usr/share/man/man1/cutback.1.gz" ] || fail "no manual page"
for file in copyright changelog.gz; do
  [ -f "$root/opt/moved/usr/share/doc/cutback/$file" ] || fail "no $file"
done
inside dpkg -L cutback >"$root/site/files"
inside apt-get purge -y -qq cutback >/dev/null
while IFS= read -r file; do
  [ ! -f "$root$file" ] || fail "$file stays behind"
done <"$root/site/files"
[ ! -d "$root/usr/share/cutback" ] || fail "its folder stays behind"
answers /opt/moved/usr/bin/cutback sheet /site/pump-motor.json --glands /site/glands.csv --svg \
  --output /site/drawing.svg --quiet
starts_with /site/drawing.svg "<?xml"
echo "installed, used and removed: $(wc -l <"$root/site/files") files and folders"
