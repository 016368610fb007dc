# Fetching Debian source packages without touching the machine's own apt configuration.
# Sourced by ../deps.sh. apt checks every archive against the signed index of its suite.

# Upstream version pinned; a newer Debian revision of the same upstream is taken when the pinned one is gone.
declare -A kPinnedSource=(
  [catch2]="3.7.1-0.5"
  [imgui]="1.90.1+ds-1"
  [libsdl2]="2.26.5+dfsg-1"
  [musl]="1.2.5-3.1~deb13u1"
)
kSourceSuites="bookworm trixie"

# One line per Debian archive in the machine's own apt entries, both file formats: repo-uri|keyring.
# apt itself reads the entries; only those whose signed Release file says Origin: Debian count.
debian_archives() {
  apt-get "$@" indextargets --format '$(ORIGIN)|$(CODENAME)|$(COMPONENT)|$(REPO_URI)|$(SIGNED_BY)' \
    'Created-By: Packages' 2>/dev/null |
    awk -F'|' '$1 == "Debian" && $3 == "main" && $2 !~ /-/ { sub(/^\$\(.*/, "", $5); print $4 "|" $5 }' | sort -u
}

private_apt() {
  apt-get -qq -o Dir::Etc::sourcelist=/dev/null -o Dir::Etc::sourceparts="$apt_state/parts" \
    -o Dir::State::Lists="$apt_state/lists" -o Dir::Cache="$apt_state/cache" -o APT::Sandbox::User=root \
    -o Acquire::Retries=3 -o Acquire::Languages=none "$@"
}

# Fills $apt_state with source indexes of the suites wanted. A second call in one run does nothing.
private_apt_ready=
prepare_private_apt() {
  [ -z "$private_apt_ready" ] || return 0
  apt_state="$bentbook_cache/apt"
  rm -rf "$apt_state"
  mkdir -p "$apt_state/parts" "$apt_state/lists/partial" "$apt_state/cache/archives/partial"
  local archives
  archives=$(debian_archives)
  if [ -z "$archives" ]; then # the machine's package lists were cleaned away: read them into our own folder
    local own="$apt_state/own-lists"
    mkdir -p "$own/partial"
    apt-get -qq -o Dir::State::Lists="$own" -o Dir::Cache="$apt_state/cache" -o APT::Sandbox::User=root \
      update >&2 || true
    archives=$(debian_archives -o Dir::State::Lists="$own")
  fi
  [ -n "$archives" ] || die "no Debian archive among this machine's apt sources"
  local n=0 uri keyring
  while IFS='|' read -r uri keyring; do
    n=$((n + 1))
    {
      echo "Types: deb-src"
      echo "URIs: $uri"
      echo "Suites: $kSourceSuites"
      echo "Components: main"
      [ -z "$keyring" ] || echo "Signed-By: $keyring"
    } >"$apt_state/parts/debian-$n.sources"
  done <<<"$archives"
  say "reading the source indexes of $kSourceSuites"
  private_apt update >&2 || die "apt could not read the source indexes"
  private_apt_ready=1
}

# offered_sources NAME: each version that the archive has of a source package.
offered_sources() {
  apt-cache -o Dir::Etc::sourcelist=/dev/null -o Dir::Etc::sourceparts="$apt_state/parts" \
    -o Dir::State::Lists="$apt_state/lists" -o Dir::Cache="$apt_state/cache" showsrc --only-source "$1" |
    sed -n 's/^Version: //p'
}

# source_version NAME: the pinned version where the archive has it, else its newest revision of that upstream version.
source_version() {
  local pinned=${kPinnedSource[$1]} offered
  offered=$(offered_sources "$1")
  if grep -qxF "$pinned" <<<"$offered"; then
    echo "$pinned"
  else
    local v
    while read -r v; do
      [ "${v%-*}" != "${pinned%-*}" ] || echo "$v"
    done <<<"$offered" | sort -V | tail -n 1
  fi
}

# fetch_source NAME FOLDER: unpacks the source package, Debian's patches applied, into FOLDER.
fetch_source() {
  prepare_private_apt
  local version dl
  version=$(source_version "$1")
  [ -n "$version" ] || die "no source package $1 of upstream version ${kPinnedSource[$1]%-*} in $kSourceSuites"
  say "fetching source package $1 $version"
  dl=$bentbook_cache/dl
  rm -rf "$dl"
  mkdir "$dl"
  (cd "$dl" && private_apt source --download-only "$1=$version" >&2) || die "could not fetch $1 $version"
  # apt has checked the hashes against the signed index; the .dsc's own signature would need the uploader's key.
  dpkg-source --no-check -x "$dl"/*.dsc "$2" >/dev/null || die "could not unpack $1 $version"
  rm -rf "$dl"
}

# upstream_archive NAME VERSION FOLDER: upstream's archive alone, unpacked. Debian's own part is not on every mirror, and
# changes nothing that is used here.
upstream_archive() {
  local version
  prepare_private_apt
  version=$(offered_sources "$1" | grep -m 1 "^$2[.+-]") || die "no source package $1 $2"
  say "fetching source package $1 $version"
  mkdir "$3"
  (cd "$3" && private_apt source --download-only --tar-only "$1=$version" >&2) || die "could not fetch $1"
  tar -xf "$3/"*.orig.tar.* -C "$3" --strip-components=1
}
