# Unit `qr`: the C version of qr-code-generator: one source file and its header, compiled inside each build folder.
kQr=qr-code-generator
kQrVersion=1.8.0 # upstream's; pinned here, since an entry in the common table would rename every other unit

compilers_qr() { :; }

build_qr() {
  local out=$1 work=$2
  upstream_archive "$kQr" "$kQrVersion" "$work/qr"
  cp "$work"/qr/c/qrcodegen.{c,h} "$work/qr/Readme.markdown" "$out/"
}
