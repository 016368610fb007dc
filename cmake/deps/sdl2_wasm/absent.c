/* What SDL's window and events call of the parts that are left out of the page's build (../sdl2_wasm.sh): surfaces,
   gestures, the log, error texts. The page draws with WebGL, tells gestures itself and shows its own words. */
#include <SDL.h>

int Emscripten_CreateWindowFramebuffer(void *device, SDL_Window *window, Uint32 *format, void **pixels, int *pitch) {
  return -1;
}
int Emscripten_UpdateWindowFramebuffer(void *device, SDL_Window *window, const SDL_Rect *rects, int count) { return -1; }
void Emscripten_DestroyWindowFramebuffer(void *device, SDL_Window *window) {}
SDL_Surface *SDL_CreateRGBSurface(Uint32 flags, int w, int h, int depth, Uint32 r, Uint32 g, Uint32 b, Uint32 a) {
  return NULL;
}
SDL_Surface *SDL_CreateRGBSurfaceFrom(void *pixels, int w, int h, int depth, int pitch, Uint32 r, Uint32 g, Uint32 b,
                                      Uint32 a) {
  return NULL;
}
void SDL_FreeSurface(SDL_Surface *surface) {}
SDL_Surface *SDL_ConvertSurfaceFormat(SDL_Surface *surface, Uint32 format, Uint32 flags) { return NULL; }

int SDL_GestureAddTouch(SDL_TouchID id) { return 0; }
int SDL_GestureDelTouch(SDL_TouchID id) { return 0; }
void SDL_GestureProcessEvent(SDL_Event *event) {}
void SDL_GestureQuit(void) {}

void SDL_Log(const char *format, ...) {}
void SDL_LogDebug(int category, const char *format, ...) {}
void SDL_LogInit(void) {}
SDL_LogPriority SDL_LogGetPriority(int category) { return SDL_LOG_PRIORITY_CRITICAL; }

int SDL_SetError(const char *format, ...) { return -1; }
int SDL_Error(SDL_errorcode code) { return -1; }
const char *SDL_GetError(void) { return ""; }
void SDL_ClearError(void) {}
