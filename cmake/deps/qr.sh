# Unit `qr`: the C version of qr-code-generator: one source file and its header, compiled inside each build folder.
kQr=qr-code-generator
kQrVersion=1.8.0 # upstream's; pinned here, since an entry in the common table would rename every other unit

compilers_qr() { :; }

# Upstream's archive alone (Debian's own part is not on every mirror, and changes nothing that is used here); apt checks
# its hash against the signed index.
build_qr() {
  local out=$1 work=$2 version
  prepare_private_apt
  version=$(apt-cache -o Dir::Etc::sourcelist=/dev/null -o Dir::Etc::sourceparts="$apt_state/parts" \
    -o Dir::State::Lists="$apt_state/lists" -o Dir::Cache="$apt_state/cache" showsrc --only-source "$kQr" |
    sed -n 's/^Version: //p' | grep -m 1 "^$kQrVersion-") || die "no source package $kQr $kQrVersion"
  say "fetching source package $kQr $version"
  mkdir "$work/qr"
  (cd "$work/qr" && private_apt source --download-only --tar-only "$kQr=$version" >&2) || die "could not fetch $kQr"
  tar -xf "$work/qr/"*.orig.tar.* -C "$work/qr" --strip-components=1
  cp "$work"/qr/c/qrcodegen.{c,h} "$work/qr/Readme.markdown" "$out/"
}
