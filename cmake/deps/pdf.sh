# Unit `pdf`: what writes PDF, as C sources that are compiled inside each build folder, native and WebAssembly alike, so
# that both write the same bytes.
#   haru/   libharu: pages, fonts, streams. Its CJK tables and the widths of the fonts that every reader has are left out
#           (pdf/absent.c): we embed our own letters
#   zlib/   what packs the streams
# zlib's licence, both of them. Upstream's archives alone, as in qr.sh; apt checks their hashes against the signed index.
kHaru=libharu
kHaruVersion=2.3.0 # pinned here, since entries in the common table would rename every other unit
kZlib=zlib
kZlibVersion=1:1.2.13

compilers_pdf() { cat "$deps_dir/pdf/absent.c"; }

# upstream_archive NAME VERSION FOLDER
upstream_archive() {
  local version
  prepare_private_apt
  version=$(apt-cache -o Dir::Etc::sourcelist=/dev/null -o Dir::Etc::sourceparts="$apt_state/parts" \
    -o Dir::State::Lists="$apt_state/lists" -o Dir::Cache="$apt_state/cache" showsrc --only-source "$1" |
    sed -n 's/^Version: //p' | grep -m 1 "^$2[.+-]") || die "no source package $1 $2"
  say "fetching source package $1 $version"
  mkdir "$3"
  (cd "$3" && private_apt source --download-only --tar-only "$1=$version" >&2) || die "could not fetch $1"
  tar -xf "$3/"*.orig.tar.* -C "$3" --strip-components=1
}

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
