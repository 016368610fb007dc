# Unit `statics`: linear algebra and linear programs for core/raising.
#   include/Eigen/   headers, copied out of Debian's -dev package, so that a WebAssembly build never sees the rest of the
#                    host's /usr/include
#   lp_solve/        the C sources of the solver without its file readers, compiled inside each build folder
kLpSolve=lp-solve
kLpSolveVersion=5.5.2.5 # pinned here, since an entry in the common table would rename every other unit


compilers_statics() { dpkg-query -W libeigen3-dev 2>/dev/null || true; }

build_statics() {
  local out=$1 work=$2 f
  mkdir -p "$out/include" "$out/lp_solve"
  cp -r /usr/include/eigen3/Eigen "$out/include/"
  cp /usr/share/doc/libeigen3-dev/copyright "$out/include/Eigen/"
  prepare_private_apt
  kPinnedSource[$kLpSolve]="$kLpSolveVersion-2"
  fetch_source "$kLpSolve" "$work/lp"
  unset "kPinnedSource[$kLpSolve]"
  cp -r "$work"/lp/* "$out/lp_solve/"
  rm -rf "$out"/lp_solve/{demo,lp_solve,lpsolve55,doc,debian}
  cp "$work/lp/debian/copyright" "$out/lp_solve/"
}
