#!/bin/sh
# tree.sh RULE SOURCE: rules of the source tree that no compiler checks.
set -eu
rule=$1
cd "$2"
bad=

# complain TITLE LINES: notes what grep found
complain() {
  [ -z "$2" ] || bad="$bad
$1:
$2"
}

# includes REGEX FOLDER...: lines that include what matches
includes() {
  pattern=$1
  shift
  grep -rnE "^ *# *include *[<\"]($pattern)" "$@" || true
}

case $rule in
  layers)  # one direction: cli > run > print, io > core
    core_headers=$(find include/cutback -name '*.hpp' ! -path '*/io/*' ! -path '*/print/*')
    complain "the core knows no files, pages or words typed by a user" \
      "$(includes '(cutback/)?(io|print|run|cli)/' src/core $core_headers)"
    complain "the core has no streams, clock, files or JSON" \
      "$(includes '(iostream|fstream|filesystem|cstdio|stdio.h|ctime|chrono|random|locale|nlohmann/|CLI/)' \
        src/core $core_headers)"
    complain "reading and writing know no pages and no command line" \
      "$(includes '(cutback/)?(print|run|cli)/' src/io include/cutback/io)"
    complain "printing knows no files and no command line" \
      "$(includes '((cutback/)?(io|run|cli)/|iostream|fstream|filesystem|CLI/)' \
        src/print include/cutback/print)"
    complain "a run knows no command line" "$(includes '((cutback/)?cli/|CLI/|iostream)' src/run)"
    complain "a run does not know how its options are written" \
      "$(grep -rnE '"(.*[^-])?--[a-z]' src/run || true)"
    complain "only the command line uses CLI11" "$(includes 'CLI/' src/core src/io src/print)"
    ;;
  private_headers)  # named from src/, and used in their own folder alone
    complain "a private header is named from src/" \
      "$(grep -rnE '^ *# *include *"' src | grep -vE '"(cutback|core|io|print|run|cli)/' || true)"
    for header in $(find src -name '*.hpp'); do
      folder=$(dirname "$header")
      case $folder in
        src/run) users='(src/run|src/cli)' ;;  # what the command line runs
        *) users=$folder ;;
      esac
      complain "$header is private to $users" \
        "$(includes "${header#src/}\"" src | grep -vE "^$users/" || true)"
    done
    ;;
  public_headers)  # no third-party types, nothing private
    complain "a public header includes the standard library and cutback/ alone" \
      "$(grep -rnE '^ *# *include' include | grep -vE '#include (<[a-z_]+>|"cutback/[a-z_/]+\.hpp")$' || true)"
    complain "a public header lacks #pragma once" \
      "$(find include -name '*.hpp' -exec grep -L '^#pragma once' {} +)"
    for header in $(find include -name '*.hpp'); do
      grep -rqF "$header" src --include=CMakeLists.txt || complain "not listed, not installed" "$header"
    done
    ;;
  machine_paths)  # a tree that works on one machine only
    complain "a path of one machine" \
      "$(grep -rnIE '(^|[^A-Za-z0-9_.>-])/(home|root|work|Users|mnt|media|srv)/|[^A-Za-z][A-Z]:\\' \
        CMakeLists.txt ./*.md .ci .clang-format data examples include src tests |
        grep -v '^tests/hygiene/' || true)"
    ;;
  *) echo "no such rule: $rule"; exit 2 ;;
esac

[ -z "$bad" ] || { echo "$bad"; exit 1; }
