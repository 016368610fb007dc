# Debian's Emscripten. A Node that is not Debian's does not look where Debian keeps acorn, which emcc's own scripts
# need; so compiler and linker run with NODE_PATH set, whatever starts the build.
set(ENV{NODE_PATH} /usr/share/nodejs)
include(/usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake)
foreach(lang C CXX)
  set(CMAKE_${lang}_LINKER_LAUNCHER ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)
endforeach()
