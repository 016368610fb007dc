# Sources made at build time. Included after the targets that take them.
#   words/strings.gen.{h,cpp}   the string table, from assets/strings, with the first language's texts
#   words/all_texts.gen.cpp   the texts of every language; the page has texts_TAG.txt instead (wasm-app/words.cpp)
#   words/page_words.json     the page's own words, from page.tsv of each language
#   ui/fonts.gen.{h,cpp}     the subset fonts, from Debian's fonts-noto-core and the string table's letters
#   paper/letters.gen.h      how wide these letters are
# A wrong table or a glyph that the font lacks stops the build.
include_guard()
find_program(BENTBOOK_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
set(STRINGS_DIR ${PROJECT_SOURCE_DIR}/assets/strings)
file(GLOB STRING_TABLES CONFIGURE_DEPENDS ${STRINGS_DIR}/*.tsv ${STRINGS_DIR}/*/*.tsv)

add_custom_command(
  OUTPUT ${GENERATED_DIR}/words/strings.gen.h ${GENERATED_DIR}/words/strings.gen.cpp
    ${GENERATED_DIR}/words/all_texts.gen.cpp ${GENERATED_DIR}/words/page_words.json
  COMMAND ${BENTBOOK_PYTHON} ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${GENERATED_DIR}/words ${STRINGS_DIR}
  DEPENDS ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${STRING_TABLES}
  COMMENT "Making the string table" VERBATIM)
target_sources(core_small PRIVATE ${GENERATED_DIR}/words/strings.gen.h ${GENERATED_DIR}/words/strings.gen.cpp
  ${GENERATED_DIR}/words/all_texts.gen.cpp)

set(FONT_DIR /usr/share/fonts/truetype/noto CACHE PATH "Where NotoSans-Regular.ttf and NotoSans-Bold.ttf are")
set(FONT_SOURCES ${GENERATED_DIR}/ui/fonts.gen.h ${GENERATED_DIR}/ui/fonts.gen.cpp)
set(LETTER_WIDTHS ${GENERATED_DIR}/paper/letters.gen.h)
add_custom_command(
  OUTPUT ${FONT_SOURCES} ${LETTER_WIDTHS}
  COMMAND ${BENTBOOK_PYTHON} -B ${PROJECT_SOURCE_DIR}/cmake/make_font.py ${GENERATED_DIR}/ui ${FONT_DIR}
    ${STRINGS_DIR} ${GENERATED_DIR}/paper
  DEPENDS ${PROJECT_SOURCE_DIR}/cmake/make_font.py ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${STRING_TABLES}
  COMMENT "Making the fonts" VERBATIM)
target_sources(core_small PRIVATE ${LETTER_WIDTHS})
# The letters themselves, for the screens and for what writes PDF.
add_library(app_fonts STATIC EXCLUDE_FROM_ALL ${FONT_SOURCES})
target_include_directories(app_fonts PUBLIC ${GENERATED_DIR})
if(TARGET bentbook_screens)
  target_link_libraries(bentbook_screens PUBLIC app_fonts)
endif()

# All of them, for who reads sources without building them (tests/suites/lint.sh).
add_custom_target(generated DEPENDS ${GENERATED_DIR}/words/strings.gen.h ${FONT_SOURCES} ${LETTER_WIDTHS})

# Icons of the page, from assets/icons/*.svg.
find_program(RSVG_CONVERT rsvg-convert PATHS /usr/bin NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH)
if(EMSCRIPTEN AND RSVG_CONVERT)
  set(ICONS)
  foreach(icon icon:192:icon-192 icon:512:icon-512 maskable:192:maskable-192 maskable:512:maskable-512
      maskable:180:apple-touch-icon)
    string(REPLACE ":" ";" icon ${icon})
    list(GET icon 0 drawing)
    list(GET icon 1 size)
    list(GET icon 2 name)
    add_custom_command(
      OUTPUT ${GENERATED_DIR}/icons/${name}.png
      COMMAND ${CMAKE_COMMAND} -E make_directory ${GENERATED_DIR}/icons
      COMMAND ${RSVG_CONVERT} -w ${size} -h ${size} ${PROJECT_SOURCE_DIR}/assets/icons/${drawing}.svg
        -o ${GENERATED_DIR}/icons/${name}.png
      DEPENDS ${PROJECT_SOURCE_DIR}/assets/icons/${drawing}.svg
      COMMENT "Drawing ${name}.png" VERBATIM)
    list(APPEND ICONS ${GENERATED_DIR}/icons/${name}.png)
  endforeach()
  add_custom_target(icons DEPENDS ${ICONS})
endif()
