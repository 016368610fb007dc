# Unit `pdf`: what writes PDF, as C sources that are compiled inside each build folder, native and WebAssembly alike, so
# that both write the same bytes.
#   haru/   libharu: pages, fonts, streams. Its CJK tables and the widths of the fonts that every reader has are left out
#           (pdf/absent.c): we embed our own letters
#   zlib/   what packs the streams
# zlib's licence, both of them. Upstream's archives alone.
kHaru=libharu
kHaruVersion=2.3.0 # pinned here, since entries in the common table would rename every other unit
kZlib=zlib
kZlibVersion=1:1.2.13

compilers_pdf() { cat "$deps_dir/pdf/absent.c"; }

build_pdf() {
  local out=$1 work=$2 f
  upstream_archive "$kHaru" "$kHaruVersion" "$work/haru"
  upstream_archive "$kZlib" "$kZlibVersion" "$work/zlib"
  mkdir -p "$out/haru" "$out/zlib"
  cp "$work"/haru/include/*.h "$work"/haru/src/*.{c,h} "$work/haru/README" "$deps_dir/pdf/absent.c" "$out/haru/"
  rm "$out"/haru/hpdf_{encoder,fontdef}_{cns,cnt,jp,kr}.c "$out"/haru/hpdf_fontdef_base14.c
  printf '%s\n' '#define LIBHPDF_HAVE_NOPNGLIB' '#define HPDF_NOPNGLIB' >"$out/haru/hpdf_config.h"
  for f in adler32 compress crc32 deflate trees zutil; do cp "$work/zlib/$f.c" "$out/zlib/"; done
  cp "$work"/zlib/{crc32,deflate,gzguts,trees,zconf,zlib,zutil}.h "$work/zlib/LICENSE" "$out/zlib/"
}
