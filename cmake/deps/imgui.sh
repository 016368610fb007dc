# Unit `imgui`: Dear ImGui's sources, compiled inside each build folder with our own imgui_config.h.
compilers_imgui() { :; }

build_imgui() {
  local out=$1 work=$2
  fetch_source imgui "$work/imgui"
  mkdir -p "$out/backends"
  cp "$work"/imgui/{imgui,imgui_draw,imgui_tables,imgui_widgets}.cpp "$work"/imgui/{imgui,imgui_internal,imconfig}.h \
    "$work"/imgui/imstb_{rectpack,textedit,truetype}.h "$work/imgui/LICENSE.txt" "$out/"
  cp "$work"/imgui/backends/imgui_impl_sdl2.{h,cpp} "$out/backends/"
}
