# deps: core native fonts patterns
# Full-size patterns and labels, read by outside programs (tests/patterns/check.py): each DXF is audited by ezdxf and its
# outlines are what shapely leaves of the timber's face; a rafter's against plain trigonometry; the command line's own PDF
# drawn by poppler at 300 dpi, its pages laid cross on cross, measures within 0.2 mm over 200 mm; ZBar reads each label.
. tests/lib/suite.sh
build native-release pattern_rows bentbook
program=build/native-release/native-app/bentbook
rows=build/native-release/tests/patterns/pattern_rows
python=/usr/bin/python3
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

# counted COMMAND…: adds what check.py counts, and shows what failed.
counted() {
  local out counts
  out=$("$@" 2>&1)
  counts=$(sed -n 's/^patterns: \([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' <<<"$out")
  grep -v '^patterns: ' <<<"$out" | tail -n 12
  set -- ${counts:-0 1}
  passed=$((passed + $1))
  failed=$((failed + $2))
}

# book NAME CASE [MARK…]: its patterns in $made/NAME.
write_book() {
  local name=$1
  shift
  mkdir "$made/$name"
  "$rows" "$made/$name" "$@" >"$made/$name.rows"
}
book() { check "patterns of $1 are made" write_book "$@"; }

for name in rafter metric plates hips braces; do
  book "$name" "$name"
  counted "$python" -B tests/patterns/check.py polygons "$made/$name" "$made/$name.rows" "$([ "$name" = metric ] && echo mm || echo in)"
done
counted "$python" -B tests/patterns/check.py rafter "$made/rafter" "$made/rafter.rows" C-A1

# One outline drawn a hundredth of an inch too long must be found.
shorter() {
  mkdir "$made/wrong"
  cp "$made"/rafter/*.dxf "$made/wrong"
  awk '$0 == "VERTEX" { at = NR } at && NR == at + 2 && $0 == "WOOD" { wood = NR }
    wood && NR == wood + 2 && !done { done = 1; print $0 + 0.01; next } { print }' \
    "$made/rafter/C-A1_1.dxf" >"$made/wrong/C-A1_1.dxf"
  ! "$python" -B tests/patterns/check.py polygons "$made/wrong" "$made/rafter.rows" in
}
check "an outline that is off is found" shorter

# A hole drilled a hundredth of an inch beside its place must be found.
drilled_beside() {
  mkdir "$made/beside"
  cp "$made"/plates/*.dxf "$made/beside"
  local file
  for file in "$made"/beside/*.dxf; do
    grep -A2 -x CIRCLE "$file" | grep -q -x DRILL && break
  done
  awk '$0 == "CIRCLE" { at = NR } at && NR == at + 2 && $0 == "DRILL" { drill = NR }
    drill && NR == drill + 2 && !done { done = 1; print $0 + 0.01; next } { print }' "$file" >"$made/beside.dxf"
  mv "$made/beside.dxf" "$file"
  ! "$python" -B tests/patterns/check.py polygons "$made/beside" "$made/plates.rows" in
}
check "a hole beside its place is found" drilled_beside

# The command line's own PDF.
print_pages() {
  "$program" paper "$made/pages/book" --what patterns --mark C-A1,T-1 --page letter --out "$made/pages/pages.pdf"
}
book pages rafter C-A1 T-1
check "pages are printed" print_pages
counted "$python" -B tests/patterns/check.py tiles "$made/pages" "$made/pages.rows"
scaled() { ! "$python" -B tests/patterns/check.py tiles "$made/pages" "$made/pages.rows" 1.004; }
check "pages printed 0.4 % too small are found" scaled

# Check bars in both units, on both papers.
printed_file() { # UNIT PAGE
  "$program" book new "$made/$1.book" --span "24'" --length "24'" --height "10'" --pitch 9:12 &&
    "$program" paper "$made/$1.book" --what patterns --mark C-A1,B-A1.1 --unit "$1" --page "$2" --out "$made/$1.pdf"
}
for pair in "in letter" "mm a4"; do
  set -- $pair
  check "patterns in $1 are printed on $2" printed_file "$1" "$2"
  counted "$python" -B tests/patterns/check.py pdf "$made/$1.pdf" "$1"
done

label_sheet() { # SHEET a4|letter
  mkdir "$made/labels-$1-$2"
  "$rows" "$made/labels-$1-$2" labels "$1" "$2" >"$made/labels-$1-$2.rows" &&
    "$program" paper "$made/labels-$1-$2/book" --what labels --labels "${1:-cut}" --page "$2" \
      --out "$made/labels-$1-$2/pages.pdf"
}
for sheet in "'' a4" "'' letter" "2x4 a4" "3x8 a4" "2x5 letter" "3x10 letter"; do
  eval "set -- $sheet"
  check "labels $1 on $2 are made" label_sheet "$1" "$2"
  counted "$python" -B tests/patterns/check.py labels "$made/labels-$1-$2" "$made/labels-$1-$2.rows"
done
finish "$passed" "$failed"
