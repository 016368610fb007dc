# Unit `core`: sources every build of the core and its tests needs. Compiled inside each build folder
# (a few files), because the compiler, the sanitizers and the target differ from build to build.
#   libm/        musl's files for the one libm
#   catch2/      amalgamated
#   include/     header-only: tl/expected.hpp, rapidjson/ (copied out of Debian's -dev packages, so that a
#                WebAssembly build never sees the rest of the host's /usr/include)

kLibmFiles="sin cos tan asin acos atan atan2 sqrt fabs floor ceil round fmod hypot pow exp log cbrt scalbn
  __sin __cos __tan __rem_pio2 __rem_pio2_large sqrt_data exp_data pow_data log_data
  __math_oflow __math_uflow __math_xflow __math_divzero __math_invalid"

compilers_core() { dpkg-query -W libexpected-dev rapidjson-dev 2>/dev/null || true; }

build_core() {
  local out=$1 work=$2 f
  fetch_source musl "$work/musl"
  mkdir -p "$out/libm" "$out/catch2" "$out/include"
  for f in $kLibmFiles; do cp "$work/musl/src/math/$f.c" "$out/libm/"; done
  cp "$work"/musl/src/math/{sqrt,exp,pow,log}_data.h "$work/musl/src/internal/libm.h" "$out/libm/"
  cp "$work/musl/COPYRIGHT" "$out/libm/"
  : >"$out/libm/fp_arch.h" # no processor-specific variants: the same C everywhere
  fetch_source catch2 "$work/catch2"
  cp "$work"/catch2/extras/catch_amalgamated.{hpp,cpp} "$work/catch2/LICENSE.txt" "$out/catch2/"
  cp -r /usr/include/tl /usr/include/rapidjson "$out/include/"
  cp /usr/share/doc/libexpected-dev/copyright "$out/include/tl/"
  cp /usr/share/doc/rapidjson-dev/copyright "$out/include/rapidjson/"
}
