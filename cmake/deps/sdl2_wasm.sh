# Unit `sdl2_wasm`: the few parts of SDL2 that the page uses (window, events), built by Debian's Emscripten from a list of
# sources: SDL's own configure step takes three minutes under emcc, this half a minute. SDL's GL side is off: it asks for
# GL functions by name, so that all three hundred of them would be linked; the page makes its WebGL context itself.
kSdlOff="-DSDL_LEAN_AND_MEAN=1 -DSDL_AUDIO_DISABLED=1 -DSDL_JOYSTICK_DISABLED=1 -DSDL_HAPTIC_DISABLED=1
  -DSDL_SENSOR_DISABLED=1 -DSDL_RENDER_DISABLED=1 -DSDL_HIDAPI_DISABLED=1 -DSDL_LOADSO_DUMMY=1"
kSdlSources="*.c atomic cpuinfo events file filesystem/emscripten loadso/dummy locale locale/emscripten misc
  misc/emscripten power power/emscripten stdlib thread thread/generic timer timer/unix video video/emscripten
  video/yuv2rgb"

compilers_sdl2_wasm() { dpkg-query -W emscripten 2>/dev/null || true; }

build_sdl2_wasm() {
  local out=$1 work=$2 s files=()
  fetch_source libsdl2 "$work/sdl2"
  for s in $kSdlSources; do
    case $s in
      *.c) files+=("$work"/sdl2/src/$s) ;;
      *) files+=("$work/sdl2/src/$s"/*.c) ;;
    esac
  done
  mkdir -p "$out/lib" "$out/include/SDL2" "$work/obj"
  cp "$work"/sdl2/include/*.h "$out/include/SDL2/"
  cp "$work/sdl2/LICENSE.txt" "$out/"
  sed -i 's/^#define SDL_LOADSO_DLOPEN 1//; s/^#define SDL_VIDEO_RENDER_OGL_ES2 1//; s/^#define SDL_VIDEO_OPENGL_E.*//; s/^#define HAVE_ICONV 1//; s/^#define SDL_AUDIO_DRIVER_.*//; s/^#define SDL_JOYSTICK_EMSCRIPTEN 1//; s/^#define SDL_SENSOR_DUMMY 1//; s/^#define HAVE_DLOPEN 1//' \
    "$out/include/SDL2/SDL_config_emscripten.h"
  say "compiling ${#files[@]} files of SDL2"
  printf '%s\n' "${files[@]}" | NODE_PATH=/usr/share/nodejs xargs -P 2 -I{} sh -c '
    f={}
    emcc -Oz -w -fno-exceptions -sUSE_SDL=0 '"$(echo $kSdlOff)"' -I'"$out"'/include/SDL2 \
      -I'"$work"'/sdl2/src/video/khronos -c "$f" -o '"$work"'/obj/$(echo "$f" | cksum | cut -d" " -f1).o' >&2 ||
    die "SDL2 does not compile"
  NODE_PATH=/usr/share/nodejs emar rcs "$out/lib/libSDL2.a" "$work"/obj/*.o >&2 || die "emar failed"
}
