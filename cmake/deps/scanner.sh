# Unit `scanner`: jsqr (Apache-2.0), which reads a QR code off a picture where the browser has no detector of its own.
kScanner=jsqr@1.4.0
kScannerIntegrity=sha512-dxLob7q65Xg2DvstYkRpkYtmKm2sPJ9oFhrhmudT1dZvNFFTlroai3AWSpLey/w5vMcLBXRgOJsbXpdN9HzU/A==

compilers_scanner() { :; }

build_scanner() {
  local out=$1 work=$2 file
  file=$work/$(cd "$work" && npm pack "$kScanner" --silent --loglevel=error) || die "npm could not fetch $kScanner"
  [ "$(node -p '"sha512-" + crypto.createHash("sha512").update(fs.readFileSync(process.argv[1])).digest("base64")' \
    "$file")" = "$kScannerIntegrity" ] ||
    die "$kScanner is not the file that was pinned"
  tar -xzf "$file" -C "$out" --strip-components=1 package/dist/jsQR.js package/LICENSE package/package.json
}
