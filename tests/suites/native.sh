# deps: core native fonts webkit
# The window under Xvfb, and the makers of strings and fonts with wrong input.
. tests/lib/suite.sh
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python=/usr/bin/python3

# refuses WORD COMMAND…: the command fails and names WORD.
refuses() {
  local word=$1 out
  shift
  if out=$("$@" 2>&1); then echo "was accepted: $*" && return 1; fi
  grep -qF -- "$word" <<<"$out" || { echo "does not name $word: $out" && return 1; }
}
# tables ENGLISH SPANISH: a folder of string tables.
tables() {
  mkdir -p "$work/strings/en" "$work/strings/es"
  printf '%b' 'en\tEnglish\t1\nes\tEspañol\t1\n' >"$work/strings/languages.tsv"
  printf '%b' "$1" >"$work/strings/en/table.tsv"
  printf '%b' "$2" >"$work/strings/es/table.tsv"
}
strings() {
  tables "$@"
  "$python" -B cmake/make_strings.py "$work/out" "$work/strings"
}
fonts() {
  tables "$@"
  "$python" -B cmake/make_font.py "$work/out" /usr/share/fonts/truetype/noto "$work/strings"
}
bad_line() {
  tables 'a\tx\n' 'a\tx\n'
  printf '%b' "$1" >>"$work/strings/languages.tsv"
  "$python" -B cmake/make_strings.py "$work/out" "$work/strings"
}
check "a good table is taken" strings 'a_b\tOne {n}\n' 'a_b\tUno {n}\n'
check "a duplicate id is refused" refuses "en/table.tsv:1" strings 'a\tx\na\ty\n' 'a\tx\n'
check "a missing translation is refused" refuses "es/table.tsv: 'b' is missing" strings 'a\tx\nb\tx\n' 'a\tx\n'
check "an empty translation is refused" refuses "es/table.tsv:1: 'a' wants one text" strings 'a\tx\n' 'a\t\n'
check "a translation of nothing is refused" refuses "'b' is not in en/table.tsv" strings 'a\tx\n' 'a\tx\nb\tx\n'
check "slots that differ are refused" refuses "{b}" strings 'a\tx {b}\n' 'a\tx {c}\n'
check "a plural without its other half is refused" refuses "'a' wants both" strings 'a#one\tx\n' 'a#one\tx\n'
check "plural forms with unlike slots are refused" refuses "other slots" strings 'a#one\tx {q}\na#other\t{n}\n' 'a#one\tx {q}\na#other\t{n}\n'
check "an id that is no id is refused" refuses "'A b' is no id" strings 'A b\tx\n' 'A b\tx\n'
check "a language without its folder is refused" refuses "xx/table.tsv: 'a' is missing" bad_line 'xx\tXx\t1\n'
check "a tag that is no tag is refused" refuses "languages.tsv:3" bad_line 'x/y\tXx\t1\n'
check "letters of every language are taken" fonts 'a\tMark 7\xe2\x80\xb2\n' 'a\tÁéñ ¿?\n'
check "a missing glyph is named" refuses "U+2603" fonts 'a\tsnow \xe2\x98\x83\n' 'a\tx\n'

# The renderer sets state and never asks for it.
no_queries() { ! grep -rnE --include=*.cpp --include=*.h '\bgl(Get|Is)[A-Z]' core/render core/ui core/screens native-app wasm-app; }
check "no OpenGL state is queried" no_queries

build native-debug bentbook desktop_tests
run_catch build/native-debug/tests/desktop/desktop_tests
bentbook() {
  XDG_DATA_HOME="$work/data" LIBGL_ALWAYS_SOFTWARE=1 timeout 120 \
    xvfb-run -a -s "-screen 0 1600x1800x24" build/native-debug/native-app/bentbook "$@"
}

# not_flat FILE: a picture in which something was drawn.
not_flat() {
  "$python" -B - "$1" <<'PY'
import sys
from collections import Counter
data = open(sys.argv[1], "rb").read()
head, pixels = data.split(b"\n", 1)
_, w, h, _ = head.split()
assert len(pixels) == int(w) * int(h) * 3, "not a whole picture"
colours = Counter(pixels[i:i + 3] for i in range(0, len(pixels), 3))
most = colours.most_common(1)[0][1] / (len(pixels) // 3)
assert len(colours) > 20 and most < 0.98, f"{len(colours)} colours, {most:.3f} of one"
PY
}

shots=build/screenshots/native
mkdir -p "$shots"
window() {  # window NAME SIZE [options]: steps from standard input
  local name=$1 size=$2
  shift 2
  cat >"$work/$name.steps"
  bentbook --size "$size" --script "$work/$name.steps" "$@" || return 1
}
first_launch() { echo "shot $shots/first.ppm" | window first 390x844 && not_flat "$shots/first.ppm"; }
dark() { echo "shot $shots/dark.ppm" | window dark 390x844 --dark && not_flat "$shots/dark.ppm"; }
dense() { echo "shot $shots/dense.ppm" | window dense 320x568 --scale 3 && not_flat "$shots/dense.ppm"; }
turned() { printf 'shot %s\nsize 844 390\nshot %s\n' "$shots/tall.ppm" "$shots/wide.ppm" | window turned 390x844 &&
  not_flat "$shots/wide.ppm"; }
wrong_step() { refuses "cannot do: press no.such.key" window wrong 390x844 <<<"press no.such.key"; }
check "the window draws at first launch" first_launch
check "the window draws in the dark theme" dark
check "the window draws at 3 pixels a CSS px" dense
check "the window is resized" turned
check "a step that cannot be done fails" wrong_step

# What was entered is there after closing; a second window only reads.
kit=$work/data/bentbook/kit.json
types_a_name() {
  window typed 390x844 <<'STEPS' &&
press welcome.understood
press bar.menu
press menu.saws
press saws.2.edit
press saw.name
key Backspace
type ñ 7″
key Return
expect saw.name Hand sañ 7″
STEPS
    grep -qF 'Hand sañ 7″' "$kit"
}
keeps_it() {
  window kept 390x844 <<'STEPS'
press bar.menu
press menu.saws
expect saws.2 Hand sañ 7″
STEPS
}
escape_keeps_the_old() {
  window escape 390x844 <<'STEPS'
press bar.menu
press menu.saws
press saws.2.edit
press saw.name
type xyz
key Escape
expect saw.name Hand sañ 7″
STEPS
}
# A window that reads takes over when the other one has gone: from what that one left, not from what it read at first.
takes_over_afresh() {
  mkfifo "$work/gate" || return 1
  (
    flock -w 20 9 || exit 1 # the one before it may be going still
    window second 390x844 <<STEPS &
press bar.menu
press menu.saws
expect saws.2 Hand sañ 7″
shot $work/gate
press notice.write_here
press bar.menu
press menu.saws
expect saws.2 Hand sax 7″
press saws.2.edit
press saw.name
key Backspace
type ″ x
key Return
STEPS
    second=$!
    (sleep 60 && exec 7<>"$work/gate") >/dev/null 2>&1 & # or a window that fails would never be missed
    late=$!
    exec 8<"$work/gate" # it has read, and waits for its picture to be taken away
    kill $late
    sed -i 's/Hand sañ 7″/Hand sax 7″/' "$kit"
    flock -u 9
    cat <&8 >/dev/null
    wait $second
  ) 9>"$work/data/bentbook/lock" && grep -qF 'Hand sax 7″ x' "$kit"
}
# A window that sleeps is asked for the writing and gives it; both stay open, and the first one then only reads.
handed_over() {
  XDG_DATA_HOME="$work/data" LIBGL_ALWAYS_SOFTWARE=1 timeout 60 xvfb-run -a build/native-debug/native-app/bentbook &
  local first=$!
  until [ -S "$work/data/bentbook/window" ]; do sleep 0.1; kill -0 $first || return 1; done
  window third 390x844 <<'STEPS'
press notice.write_here
press bar.menu
press menu.saws
press saws.2.edit
press saw.name
key Backspace
type y
key Return
STEPS
  local status=$?
  kill -0 $first && [ $status = 0 ] && grep -qF 'Hand sax 7″ y' "$kit" || status=1
  kill $first
  wait $first
  return $status
}
second_window_reads() {
  local before
  before=$(sha256sum "$work"/data/bentbook/*.json)
  flock -n "$work/data/bentbook/lock" bash -c "
    XDG_DATA_HOME='$work/data' LIBGL_ALWAYS_SOFTWARE=1 timeout 120 xvfb-run -a build/native-debug/native-app/bentbook \
      --script <(printf 'press place.angles\nwait 2000\n')" || return 1
  [ "$before" = "$(sha256sum "$work"/data/bentbook/*.json)" ]
}
check "a name is typed and stored" types_a_name
check "a name is there after closing" keeps_it
check "Escape leaves a name as it was" escape_keeps_the_old
check "a second window does not write" second_window_reads
check "a second window takes over from what the first one left" takes_over_afresh
check "a window that is asked hands over, asleep or not" handed_over

# Nothing is drawn while nothing changes: an idle window uses no processor time.
idle() {
  XDG_DATA_HOME="$work/data" LIBGL_ALWAYS_SOFTWARE=1 xvfb-run -a bash -c '
    build/native-debug/native-app/bentbook & window=$!
    sleep 3; before=$(awk "{ print \$14 + \$15 }" /proc/$window/stat)
    sleep 4; after=$(awk "{ print \$14 + \$15 }" /proc/$window/stat)
    kill $window; wait $window
    [ $((after - before)) -le 1 ] || { echo "$((after - before)) ticks in 4 s" && exit 1; }'
}
check "an idle window rests" idle
finish "$passed" "$failed"
