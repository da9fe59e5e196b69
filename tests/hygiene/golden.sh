#!/bin/sh
# golden.sh RULE PROGRAM SOURCE: what the golden cases of tests/cli must cover and hold.
set -eu
rule=$1
program=$2
cases=$3/tests/cli
reasons=$3/tests/hygiene/options_without_case.txt
export LC_ALL=C.UTF-8
bad=

complain() { bad="$bad
$1"; }

commands=$("$program" --help | sed -n '/^Commands:/,/^$/s/^  \([a-z]\{1,\}\) .*/\1/p')
[ "$(echo "$commands" | wc -w)" -ge 6 ] || complain "cutback --help names too few commands: $commands"

# help_options COMMAND: "GROUP<tab>--option" for every option that its whole help names
help_options() {
  "$program" "$1" --help-all | awk '
    /^[A-Z][A-Za-z ]*:$/ { group = $0; sub(/:$/, "", group) }
    /^  --[a-z]/ { print group "\t" $1 }'
}

# given_in CASE-FOLDER...: the options in the args of these cases, one a line
given_in() { cat "$@" | sed -n 's/^\(--[a-z][a-z0-9-]*\).*/\1/p' | sort -u; }

golden_texts() { find "$cases" -mindepth 3 -name 'std*' -type f | sort; }

[ "$(golden_texts | wc -l)" -gt 100 ] || complain "too few golden texts in $cases"

case $rule in
  help_cases)
    for name in $commands; do
      [ -s "$cases/$name/help/stdout" ] && grep -qx -e '--help' "$cases/$name/help/args" ||
        complain "tests/cli/$name/help: a golden case of its help is missing"
    done
    ;;
  option_cases)
    # fit, sheet and cable take the rows of one field table; the group Common is one piece of code.
    work=$(mktemp -d)
    trap 'rm -rf "$work"' EXIT
    given_in "$cases"/fit/*/args "$cases"/sheet/*/args "$cases"/cable/*/args >"$work/shared"
    given_in "$cases"/*/*/args >"$work/anywhere"
    for name in $commands; do
      given_in "$cases/$name"/*/args >"$work/own"
      help_options "$name" >"$work/options"
      [ "$(wc -l <"$work/options")" -ge 5 ] || complain "cutback $name --help names too few options"
      while IFS="$(printf '\t')" read -r group option; do
        case $name/$group in
          */Common) list=$work/anywhere ;;
          */Options | */Order) list=$work/own ;;
          fit/* | sheet/* | cable/*) list=$work/shared ;;
          *) list=$work/own ;;
        esac
        grep -qx -e "$option" "$list" && continue
        grep -q -e "^$name $option: ." "$reasons" && continue
        complain "cutback $name $option: in no golden case, and no reason in $(basename "$reasons")"
      done <"$work/options"
    done
    ;;
  clean_output)  # the same on every machine, on every day, in every version
    for text in $(golden_texts); do
      found=$(grep -nE '(^|[^A-Za-z0-9_.])/(home|root|work|tmp|usr|var|etc|opt|mnt|Users)/|\b20[0-9]{2}-[01][0-9]-[0-3][0-9]\b|\b[0-2][0-9]:[0-5][0-9]:[0-5][0-9]\b' "$text" || true)
      [ -z "$found" ] || complain "$text: a path, a date or a time: $found"
      version=$("$program" --version | sed 's/^cutback //')
      found=$(sed "s/^  \"cutback\": \"$version\",\$//; s/^{\"cutback\":\"$version\",//" "$text" | grep -nF "$version" || true)
      [ -z "$found" ] || complain "$text: the version of the program: $found"
    done
    ;;
  narrow_output)  # lines for people, not those of --json
    for text in $(golden_texts); do
      [ "$(basename "$text")" = stdout ] || continue
      grep -qx -e '--json' -e '--qr-text' "$(dirname "$text")/args" && continue
      head -n 1 "$text" | grep -qE '^[a-z_]+(,[a-z_]+)+$' && continue  # CSV
      found=$(sed 's/\x1b\[[0-9;]*m//g' "$text" | grep -nE '^.{81,}' || true)
      [ -z "$found" ] || complain "$text: wider than 80 columns: $found"
    done
    ;;
  *) echo "no such rule: $rule"; exit 2 ;;
esac

[ -z "$bad" ] || { echo "$bad"; exit 1; }
