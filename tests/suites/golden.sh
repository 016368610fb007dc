# deps: core clang wasm
# The same rows, byte for byte, from gcc, clang, WebAssembly, gcc with fused multiply-add in reach of the compiler, and
# with it out of reach of the C library; and the rows that were approved (tests/golden/approve).
. tests/lib/suite.sh
rows=build/golden
rm -rf "$rows/out"
mkdir -p "$rows/out"

# write VARIANT COMMAND…: runs golden_rows into out/VARIANT.
write() {
  local folder=$rows/out/$1
  shift
  mkdir -p "$folder" && "$@" "$folder"
}

same_as_gcc() { diff -r "$rows/out/gcc" "$rows/out/$1" >"$rows/$1.diff" || { head -n 20 "$rows/$1.diff"; return 1; }; }

enough_rows() {
  local count
  count=$(cat "$rows"/out/gcc/*.txt | wc -l)
  echo "$count rows"
  [ "$count" -ge 20000 ]
}

# Each file of rows as it was approved, and no other one.
approved() {
  local name same=0
  for name in $({ ls "$rows/out/gcc"; ls tests/golden/rows | sed 's/\.xz$//'; } | sort -u); do
    xz -dc "tests/golden/rows/$name.xz" | diff --label "approved $name" --label "$name" -U0 - "$rows/out/gcc/$name" >"$rows/$name.diff" && continue
    same=1
    head -n 12 "$rows/$name.diff"
  done
  [ "$same" = 0 ] || echo "rows changed: look at $rows/*.diff, then run tests/golden/approve"
  return "$same"
}

variant() {
  local name=$1
  shift
  check "$name writes its rows" write "$name" "$@"
  check "$name writes what gcc writes" same_as_gcc "$name"
}

build native-release golden_rows
gcc=build/native-release/tests/golden/golden_rows
check "gcc writes its rows" write gcc "$gcc"
check "at least 20 000 rows" enough_rows
check "the rows are the approved ones" approved

variant gcc-libc-without-fma env GLIBC_TUNABLES=glibc.cpu.hwcaps=-FMA,-FMA4,-AVX2 "$gcc"

build golden-clang golden_rows
variant clang build/golden-clang/tests/golden/golden_rows

# A processor without these instructions cannot run this variant.
if grep -qw fma /proc/cpuinfo && grep -qw avx2 /proc/cpuinfo; then
  build golden-fma golden_rows
  variant gcc-fma build/golden-fma/tests/golden/golden_rows
fi

build wasm-release golden_rows
variant wasm node --no-experimental-fetch build/wasm-release/tests/golden/golden_rows.js

finish "$passed" "$failed"
