# deps: core codes
# Codes read by an outside reader: a log goes over in pieces, in another order, and labels name their timbers. SVG is
# drawn by librsvg, read by ZBar.
. tests/lib/suite.sh
build native-release code_rows
rows=build/native-release/tests/codes/code_rows
drawn=$(mktemp -d)
trap 'rm -rf "$drawn"' EXIT

check "codes are made" "$rows" "$drawn"

# read NAME: what the outside reader finds in the code, against what was put in.
read_code() {
  rsvg-convert --zoom 2 "$drawn/$1.svg" -o "$drawn/$1.png" || return 1
  zbarimg --quiet --raw -Sdisable -Sqrcode.enable "$drawn/$1.png" >"$drawn/$1.read" || return 1
  diff "$drawn/$1.txt" "$drawn/$1.read"
}
for file in "$drawn"/*.svg; do
  name=$(basename "$file" .svg)
  check "$name is read by the outside reader" read_code "$name"
done

joins() {
  cat $(ls "$drawn"/*.read | sort -r) | "$rows" join "$drawn" >"$drawn/labels" || return 1
  cmp "$drawn/log.bin" "$drawn/joined.bin"
}
check "the pieces make the log, the last first" joins
labels() { printf '%s\n' ' C-E1.3' 'b2 Viga ñ 1/2' '7fa31c G-AC2.1' 'b1 P-A1' | diff - "$drawn/labels"; }
check "the labels name their timbers" labels

# Spoiled as a knot or a smear would: a corner of each label painted over, less than its level mends.
spoiled() {
  sed 's|</svg>|<path fill="#fff" d="M22 22h4v4h-4z"/></svg>|' "$drawn/$1.svg" >"$drawn/spoiled.svg"
  cmp -s "$drawn/$1.svg" "$drawn/spoiled.svg" && return 1
  rsvg-convert --zoom 2 "$drawn/spoiled.svg" -o "$drawn/spoiled.png" || return 1
  zbarimg --quiet --raw -Sdisable -Sqrcode.enable "$drawn/spoiled.png" | diff "$drawn/$1.txt" -
}
for n in 0 1 2 3; do check "label$n is read with a smear on it" spoiled "label$n"; done
finish "$passed" "$failed"
