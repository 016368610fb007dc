#!/usr/bin/env bash
# Finds, fetches and builds what Bentbook stands on.
#   cmake/deps.sh PART…        makes everything for these parts ready: core wasm native clang lint fonts page
#                             web webkit firefox solver fit codes patterns graphs roofs paper
#   cmake/deps.sh where UNIT   prints the folder of a unit in the cache (core qr statics pdf imgui sdl2_wasm npm modeller
#                             scanner), ready or not
# Debian packages are installed only when one is missing (as root, or through sudo for apt alone). Units lie in
# ${XDG_CACHE_HOME:-~/.cache}/bentbook/<unit>-<key>; the key is a hash of the recipe and the compilers' versions.
set -euo pipefail

deps_dir=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)/deps
bentbook_cache=${XDG_CACHE_HOME:-$HOME/.cache}/bentbook

say() { echo "deps: $*" >&2; }
die() {
  echo "deps: $*" >&2
  exit 1
}

. "$deps_dir/debian.sh"

packages_of() {
  case $1 in
    core) echo build-essential cmake ninja-build ccache dpkg-dev ca-certificates python3 xz-utils \
      libexpected-dev rapidjson-dev libeigen3-dev fonts-noto-core python3-fonttools python3-brotli ;;
    wasm) echo emscripten lld-14 ;;
    native) echo libsdl2-dev libgles-dev libegl-dev libpng-dev ;;
    clang) echo clang libclang-rt-14-dev llvm ;;
    lint) echo clang clang-tidy clang-format git ;;
    fonts) echo librsvg2-bin ;; # the fonts themselves are the core's: it knows their widths
    page) echo esbuild brotli ;;
    web) echo chromium ;;
    solver) echo python3-scipy ;;
    webkit) echo webkit2gtk-driver xvfb xauth libgl1-mesa-dri ;;
    firefox) echo firefox-esr xvfb libgl1-mesa-dri ;;
    fit) ;;
    codes) echo zbar-tools librsvg2-bin ;;
    patterns) echo python3-ezdxf python3-numpy python3-shapely zbar-tools poppler-utils ;;
    graphs) echo python3-networkx ;;
    roofs) echo libcgal-dev ;;
    paper) echo poppler-utils qpdf ;;
    *) die "unknown part: $1" ;;
  esac
}

# Programs that may come from elsewhere than Debian: the package is wanted only when the program is not there.
programs_of() {
  case $1 in
    wasm) echo node:nodejs ;;
    web | fit | page) echo node:nodejs npm:npm ;;
    webkit | firefox) echo node:nodejs ;;
  esac
}

units_of() {
  case $1 in
    core) echo core qr statics pdf ;;
    wasm) echo imgui sdl2_wasm ;;
    native) echo imgui ;;
    page) echo scanner ;;
    web) echo npm ;;
    fit) echo modeller ;;
  esac
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

install_packages() {
  local wanted=() missing=() part item p
  for part in "$@"; do
    for p in $(packages_of "$part"); do wanted+=("$p"); done
    for item in $(programs_of "$part"); do
      command -v "${item%%:*}" >/dev/null || wanted+=("${item#*:}")
    done
  done
  local have
  have=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' 2>/dev/null | sed -n 's/^installed //p')
  for p in "${wanted[@]}"; do
    grep -qxF "$p" <<<"$have" || missing+=("$p")
  done
  [ ${#missing[@]} -gt 0 ] || return 0
  say "installing ${missing[*]}"
  export DEBIAN_FRONTEND=noninteractive # sudo may drop it; without a terminal debconf asks nothing either
  as_root apt-get -qq -o DPkg::Lock::Timeout=600 update >&2 || true
  as_root apt-get -qq -y -o Dpkg::Use-Pty=0 -o DPkg::Lock::Timeout=600 -o Acquire::Retries=3 \
    install --no-install-recommends "${missing[@]}" >&2 </dev/null || die "apt could not install ${missing[*]}"
}

load_recipe() { . "$deps_dir/$1.sh" || die "unknown unit: $1"; }

unit_folder() {
  local key
  key=$({ cat "$deps_dir/$1.sh"; declare -p kPinnedSource; "compilers_$1"; } | sha256sum | cut -c1-16)
  echo "$bentbook_cache/$1-$key"
}

make_unit() {
  load_recipe "$1"
  local folder work
  folder=$(unit_folder "$1")
  [ ! -d "$folder" ] || return 0
  work=$bentbook_cache/work # ours alone under the lock; a broken-off build's remains go first
  rm -rf "$work"
  mkdir -p "$work/out"
  say "building $1"
  "build_$1" "$work/out" "$work"
  mv "$work/out" "$folder"
  rm -rf "$work"
}

all_units_ready() {
  local u
  for u in "$@"; do
    load_recipe "$u"
    [ -d "$(unit_folder "$u")" ] || return 1
  done
}

if [ "${1:-}" = where ]; then
  load_recipe "$2"
  unit_folder "$2"
  exit 0
fi

install_packages "$@"
units=()
for part in "$@"; do
  for u in $(units_of "$part"); do units+=("$u"); done
done
[ ${#units[@]} -gt 0 ] || exit 0
if ! all_units_ready "${units[@]}"; then
  mkdir -p "$bentbook_cache"
  exec 9>"$bentbook_cache/lock"
  flock 9
  for u in "${units[@]}"; do make_unit "$u"; done
  rm -rf "$bentbook_cache/apt" "$bentbook_cache/dl"
fi
