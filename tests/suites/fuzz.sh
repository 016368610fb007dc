# deps: core clang
# Every fuzzer of tests/fuzz for FUZZ_SECONDS (15; under `tests/run long` 3600), two at a time, from the seeds in
# tests/corpus and what earlier runs on this machine found. No finding: passed. A finding stays in build/fuzz/findings.
. tests/lib/suite.sh
folder=build/fuzz
if [ "$long" = 1 ]; then default=3600; else default=15; fi
export FUZZ_SECONDS=${FUZZ_SECONDS:-$default}
mkdir -p "$folder/findings" "$folder/log"

# Whole files are seeds as they are; of *.lines each line is one.
seeds() {
  local file line n=0
  mkdir -p "$folder/corpus/$1" "$folder/seeds/$1"
  for file in tests/corpus/"$1"/*; do
    case $file in
      *.lines) while IFS= read -r line; do printf %s "$line" >"$folder/seeds/$1/line-$((n += 1))"; done <"$file" ;;
      *) cp "$file" "$folder/seeds/$1/" ;;
    esac
  done
  [ -n "$(ls "$folder/seeds/$1")" ] || { echo "no seeds in tests/corpus/$1"; return 1; }
}

one() {
  "$folder/tests/fuzz/fuzz_$1" -max_total_time="$FUZZ_SECONDS" -max_len="${FUZZ_LENGTH:-4096}" -timeout=10 \
    -rss_limit_mb=2048 -print_final_stats=1 -artifact_prefix="$folder/findings/$1-" "$folder/corpus/$1" \
    "$folder/seeds/$1" >"$folder/log/$1" 2>&1
}

result() {
  grep -q '^stat::number_of_executed_units' "$folder/log/$1" && [ "$(cat "$folder/log/$1.status")" = 0 ] ||
    { tail -n 40 "$folder/log/$1"; return 1; }
}

build fuzz fuzzers
names=$(cd tests/fuzz && ls fuzz_*.cpp | sed 's/^fuzz_//; s/\.cpp$//')
for name in $names; do
  check "$name has seeds" seeds "$name"
  { one "$name"; echo $? >"$folder/log/$name.status"; } &
  while [ "$(jobs -rp | wc -l)" -ge 2 ]; do wait -n; done
done
wait
for name in $names; do
  check "$name: no finding" result "$name"
  echo "$name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$folder/log/$name") inputs in $FUZZ_SECONDS s"
done
finish "$passed" "$failed"
