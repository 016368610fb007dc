# Unit `sdl2_wasm`: the few parts of SDL2 that the page uses (window, events), built by Debian's Emscripten from a list of
# sources: SDL's own configure step takes three minutes under emcc, this a quarter of one. SDL's GL side is off: it asks
# for GL functions by name, so that all three hundred of them would be linked; the page makes its WebGL context itself.
# Surfaces, gestures, the log and error texts (and printf with them) are off too: 20 KB less for a phone to fetch.
kSdlOff="-DSDL_LEAN_AND_MEAN=1 -DSDL_AUDIO_DISABLED=1 -DSDL_JOYSTICK_DISABLED=1 -DSDL_HAPTIC_DISABLED=1
  -DSDL_SENSOR_DISABLED=1 -DSDL_RENDER_DISABLED=1 -DSDL_HIDAPI_DISABLED=1 -DSDL_LOADSO_DUMMY=1"
kSdlSources="SDL.c SDL_assert.c SDL_guid.c SDL_hints.c SDL_list.c SDL_utils.c atomic/*.c events/*.c stdlib/*.c
  thread/*.c thread/generic/*.c timer/*.c timer/unix/*.c video/SDL_rect.c video/SDL_video.c
  video/emscripten/SDL_emscripten[emv]*.c"
kSdlAbsent="events/SDL_gesture.c"
# C library functions that SDL must not use: its own are smaller.
kSdlOwn="ATOF|STRTOD|VSNPRINTF|STDIO_H"

compilers_sdl2_wasm() {
  dpkg-query -W emscripten 2>/dev/null || true
  cat "$deps_dir/sdl2_wasm/absent.c"
}

build_sdl2_wasm() {
  local out=$1 work=$2 src=$2/sdl2/src files
  fetch_source libsdl2 "$work/sdl2"
  rm "$src"/$kSdlAbsent
  sed -i '/SDL_EventLoggingVerbosity > 0/s/(.*)/(0)/' "$src/events/SDL_events.c"
  grep -q '^    if (0) {' "$src/events/SDL_events.c" || die "SDL's log of events is not where it was"
  mapfile -t files < <(cd "$src" && printf "$src/%s\n" $kSdlSources)
  mkdir -p "$out/lib" "$out/include/SDL2" "$work/obj"
  cp "$work"/sdl2/include/*.h "$out/include/SDL2/"
  cp "$work/sdl2/LICENSE.txt" "$out/"
  sed -Ei 's/^#define (SDL_LOADSO_DLOPEN|SDL_VIDEO_RENDER_OGL_ES2|HAVE_ICONV|SDL_JOYSTICK_EMSCRIPTEN|SDL_SENSOR_DUMMY|HAVE_DLOPEN) 1//
    s/^#define (SDL_VIDEO_OPENGL_E|SDL_AUDIO_DRIVER_).*//; s/^#define HAVE_('"$kSdlOwn"') 1//' \
    "$out/include/SDL2/SDL_config_emscripten.h"
  files+=("$deps_dir/sdl2_wasm/absent.c")
  say "compiling ${#files[@]} files of SDL2"
  printf '%s\n' "${files[@]}" | NODE_PATH=/usr/share/nodejs xargs -P 2 -I{} sh -c '
    f={}
    emcc -Oz -w -fno-exceptions -sUSE_SDL=0 '"$(echo $kSdlOff)"' -I'"$out"'/include/SDL2 \
      -I'"$work"'/sdl2/src/video/khronos -c "$f" -o '"$work"'/obj/$(echo "$f" | cksum | cut -d" " -f1).o' >&2 ||
    die "SDL2 does not compile"
  NODE_PATH=/usr/share/nodejs emar rcs "$out/lib/libSDL2.a" "$work"/obj/*.o >&2 || die "emar failed"
}
