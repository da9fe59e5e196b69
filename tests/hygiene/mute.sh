#!/bin/sh
# mute.sh NM OBJECTS: nothing in the library touches the console, the environment or the process;
# the core and the printing touch no file, clock or locale either. OBJECTS holds one path a line.
set -eu
nm=$1
objects=$2

console='^(std::(cout|cerr|clog|cin|wcout|wcerr)|stdout|stderr|stdin|printf|fprintf|vprintf|vfprintf|__printf_chk|__fprintf_chk|puts|fputs|putchar|putc|fputc|perror)$'
process='^(exit|_exit|_Exit|quick_exit|abort|std::terminate\(\)|atexit|system|fork|raise|signal|getenv|secure_getenv|setenv|putenv)$'
outside='^(fopen|fopen64|open|open64|read|write|fread|fwrite|mmap|mmap64|stat|stat64|unlink|rename|time|clock|clock_gettime|gettimeofday|localtime|gmtime|rand|srand|random|setlocale|localeconv)$|^std::(chrono::.*::now\(\)|filesystem::|random_device|locale::global|basic_(if|of|f)stream)'

# Symbols of one object that it wants from elsewhere, without the version of the C library.
wanted() { "$nm" -u -C "$1" 2>/dev/null | sed 's/^ *[A-Za-z] //; s/@.*//'; }

bad=
seen=0
while IFS= read -r object; do
  [ -n "$object" ] || continue
  seen=$((seen + 1))
  forbidden="$console|$process"
  case $object in
    */cutback_core.dir/*core/* | */cutback_core.dir/*print/*) forbidden="$forbidden|$outside" ;;
  esac
  # The writer of JSON asks which decimal point the locale has, to put a point in its place.
  case $object in
    */cutback_core.dir/*print/*) forbidden=$(echo "$forbidden" | sed 's/|localeconv//') ;;
  esac
  # std::terminate: a noexcept function that is left by an exception; the compiler's own call.
  found=$(wanted "$object" | grep -E "$forbidden" | grep -v '^std::terminate()$' || true)
  [ -z "$found" ] || bad="$bad
$object: $(echo "$found" | tr '\n' ' ')"
done <"$objects"

[ "$seen" -gt 10 ] || { echo "only $seen objects were looked at"; exit 1; }
[ -z "$bad" ] || { echo "symbols that do not belong there:$bad"; exit 1; }
echo "$seen objects are mute"
