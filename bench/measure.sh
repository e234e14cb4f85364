#!/usr/bin/env bash
# Times `measure` against two general-purpose readers on one large file: whole processes, one after
# the other, round by round, so that what else the machine does falls on all alike.
#
#   bench/measure.sh [FACETS] [ROUNDS] [FOLDER]     (5000000, 5, a new folder below /tmp)
set -u
here=$(cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.." && pwd)
facets=${1:-5000000}
rounds=${2:-5}
work=${3:-$(mktemp -d /tmp/amperskin-bench.XXXXXX)}
mkdir -p "$work" || exit 70
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
file=$work/ring-$facets.stl

"$here/amperskin" --help >/dev/null || exit 70 # builds if needed, outside the clock
(cd "$here" && mvn -q -B -pl mesh-core dependency:build-classpath -DincludeScope=test \
  -Dmdep.outputFile="$work/classpath") >/dev/null || { echo "no class path for the readers" >&2; exit 70; }
libraries=$(cat "$work/classpath")
"${java}c" -d "$work" -cp "$libraries" "$here"/bench/*.java || exit 70
[ -e "$file" ] || "$java" -cp "$work" MakeTorus "$file" "$facets" || exit 70

names=(quick no-overlaps full reader-1 reader-2)
label() {
  case $1 in
    quick) echo "measure --quick" ;;
    no-overlaps) echo "measure --no-overlaps" ;;
    full) echo "measure" ;;
    reader-1) echo "Open Asset Import Library (LWJGL 3.4.3)" ;;
    reader-2) echo "Apache Commons Geometry 1.0" ;;
  esac
}
run() {
  case $1 in
    quick) "$here/amperskin" measure --quick "$file" ;;
    no-overlaps) "$here/amperskin" measure --no-overlaps "$file" ;;
    full) "$here/amperskin" measure "$file" ;;
    reader-1) "$java" -cp "$work:$libraries" AssimpArea "$file" ;;
    reader-2) "$java" -cp "$work:$libraries" CommonsArea "$file" ;;
  esac
}
median() { sort -n "$1" | awk '{ a[NR] = $1 } END { print a[int((NR + 1) / 2)] }'; }
# Peak of the memory in use, in MB, of the largest process below this one while it runs; Linux only.
peak() {
  local pid=$1 most=0 now p
  while kill -0 "$pid" 2>/dev/null; do
    for p in "$pid" $(pgrep -P "$pid" 2>/dev/null); do
      now=$(awk '/VmHWM/ { print int($2 / 1024) }' "/proc/$p/status" 2>/dev/null)
      [ "${now:-0}" -gt "$most" ] && most=$now
    done
    sleep 0.1
  done
  echo "$most"
}

cat "$file" >/dev/null # into the file cache, for all alike
for name in "${names[@]}"; do rm -f "$work/$name.ms"; done
for round in $(seq "$rounds"); do
  for name in "${names[@]}"; do
    start=$(date +%s%N)
    if ! run "$name" >"$work/$name.out" 2>"$work/$name.err"; then
      echo "$name failed: $(head -3 "$work/$name.err")" >&2
      exit 1
    fi
    echo $((($(date +%s%N) - start) / 1000000)) >>"$work/$name.ms"
  done
  echo "round $round of $rounds done" >&2
done
# Memory apart from the clock, since looking costs time.
for name in "${names[@]}"; do
  run "$name" >/dev/null 2>&1 &
  peak $! >"$work/$name.mb"
  wait
done

echo "$(uname -m), $(nproc) processors, $("$java" -version 2>&1 | head -1)"
echo "$(basename "$file"): $(stat -c %s "$file") bytes; $rounds rounds, whole process"
echo
echo "| what | median ms | least ms | most ms | peak MB | against --quick |"
echo "|---|---|---|---|---|---|"
base=$(median "$work/quick.ms")
for name in "${names[@]}"; do
  middle=$(median "$work/$name.ms")
  echo "| $(label "$name") | $middle | $(sort -n "$work/$name.ms" | head -1) |" \
    "$(sort -n "$work/$name.ms" | tail -1) | $(cat "$work/$name.mb") |" \
    "$(awk -v a="$middle" -v b="$base" 'BEGIN { printf "%.2f", a / b }') |"
done
echo
for name in "${names[@]}"; do
  echo "$(label "$name"): $(grep -i -m 1 area "$work/$name.out")"
done
echo
echo "files and outputs: $work"
