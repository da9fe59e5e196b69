#!/bin/sh
# symbols.sh NM LIBRARY LIST: every function that programs may rely on is in the library, with the same
# parameters. What is new does not matter; a line of LIST that goes is a break, and is said in the
# changelog.
set -eu
have=$("$1" -C --defined-only "$2" 2>/dev/null | sed -n 's/^[0-9a-f]* T //p' | sed '
  s/\[abi:cxx11\]//g
  s/std::__cxx11::basic_string<char, std::char_traits<char>, std::allocator<char> >/std::string/g
  s/std::basic_string_view<char, std::char_traits<char> >/std::string_view/g
  s/, 18446744073709551615ul>/>/g
  s/, std::allocator<[a-zA-Z:]*> >/>/g
  s/ >/>/g')
missing=$(grep -v '^#' "$3" | while IFS= read -r line; do
  printf '%s\n' "$have" | grep -qxF "$line" || printf '%s\n' "$line"
done)
[ -z "$missing" ] || { printf 'no longer in the library:\n%s\n' "$missing"; exit 1; }
echo "all $(grep -vc '^#' "$3") functions are there"
