# Sources made at build time. Included after the targets that take them.
#   answers/strings.gen.{h,cpp}   the string table, from assets/strings/*.tsv
#   screens/fonts.gen.{h,cpp}     the subset fonts, from Debian's fonts-noto-core and the string table's letters
# A wrong table or a glyph that the font lacks stops the build.
include_guard()
find_program(BENTBOOK_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
file(GLOB STRING_TABLES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/assets/strings/*.tsv)

add_custom_command(
  OUTPUT ${GENERATED_DIR}/answers/strings.gen.h ${GENERATED_DIR}/answers/strings.gen.cpp
  COMMAND ${BENTBOOK_PYTHON} ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${GENERATED_DIR}/answers ${STRING_TABLES}
  DEPENDS ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${STRING_TABLES}
  COMMENT "Making the string table" VERBATIM)
target_sources(bentbook_core PRIVATE ${GENERATED_DIR}/answers/strings.gen.h ${GENERATED_DIR}/answers/strings.gen.cpp)

if(TARGET bentbook_screens)
  set(FONT_DIR /usr/share/fonts/truetype/noto CACHE PATH "Where NotoSans-Regular.ttf and NotoSans-Bold.ttf are")
  set(FONT_SOURCES ${GENERATED_DIR}/screens/fonts.gen.h ${GENERATED_DIR}/screens/fonts.gen.cpp)
  add_custom_command(
    OUTPUT ${FONT_SOURCES}
    COMMAND ${BENTBOOK_PYTHON} -B ${PROJECT_SOURCE_DIR}/cmake/make_font.py ${GENERATED_DIR}/screens ${FONT_DIR}
      ${STRING_TABLES}
    DEPENDS ${PROJECT_SOURCE_DIR}/cmake/make_font.py ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${STRING_TABLES}
    COMMENT "Making the fonts" VERBATIM)
  target_sources(bentbook_screens PRIVATE ${FONT_SOURCES})
endif()
