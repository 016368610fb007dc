# Unit `modeller`: manifold-3d, the outside solid modeller of tests/fit: its module and WebAssembly file alone. What it
# lists as dependencies serves its viewers and is not needed.
kModeller=manifold-3d@3.5.4
kModellerIntegrity=sha512-WWsme5HabwLHVcWPHT9m+s7mdmDVSEvCny+uXH1E7jEc8FbFUgM75C3Dh6NVw57Eeh3Ow7+xHCuXfxDMOemi9A==

compilers_modeller() { :; }

build_modeller() {
  local out=$1 work=$2 file
  file=$work/$(cd "$work" && npm pack "$kModeller" --silent --loglevel=error) || die "npm could not fetch $kModeller"
  [ "$(node -p '"sha512-" + crypto.createHash("sha512").update(fs.readFileSync(process.argv[1])).digest("base64")' \
    "$file")" = "$kModellerIntegrity" ] ||
    die "$kModeller is not the file that was pinned"
  tar -xzf "$file" -C "$out" --strip-components=1 package/manifold.js package/manifold.wasm package/LICENSE \
    package/package.json
}
