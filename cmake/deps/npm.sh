# Unit `npm`: the packages of the browser tests, in node_modules/. Versions and hashes stand in npm/package-lock.json;
# no install script runs and no browser is fetched.
compilers_npm() { cat "$deps_dir/npm/package.json" "$deps_dir/npm/package-lock.json"; }

build_npm() {
  local out=$1
  cp "$deps_dir"/npm/package*.json "$out/"
  (cd "$out" && npm ci --ignore-scripts --no-audit --no-fund --loglevel=error >&2) || die "npm could not install the packages"
}
