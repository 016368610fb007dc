#!/usr/bin/env python3
"""Makes the fonts that the app carries: subsets with exactly the glyphs that its texts need.

usage: make_font.py OUT_DIR FONT_DIR STRINGS_DIR [LETTERS_DIR]

Reads NotoSans-Regular.ttf and NotoSans-Bold.ttf in FONT_DIR and the string tables; writes OUT_DIR/fonts.gen.h and
OUT_DIR/fonts.gen.cpp, and LETTERS_DIR/letters.gen.h with the widths of their letters. A character that a font has no
glyph for stops the build and is named.

What is changed in the fonts: no hints, no layout tables (ImGui uses neither); the line is made 1.3 em high with the
capitals in its middle; small raised and lowered figures for fractions, the minus sign and the about sign are added,
made of the font's own figures, plus and tilde.
"""
import io
import sys
from pathlib import Path

from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

from make_strings import read_strings

# What measures are printed with, in every size.
FIGURES = "0123456789 \u00a0\u2009.,:;+-\u2212\u00d7\u00f7/\u2044%\u00b0\u2032\u2033\u2248()=?"
# Units, the few short words that stand beside figures in the big sizes, and the letters of timbers' marks.
UNITS = "mm cm in ft lb kg en ABCDEFGHIJKLMNOPQRSTUVWXYZ"
# What a person types: names, notes.
TYPED = "".join(map(chr, [*range(0x20, 0x7F), *range(0xC0, 0x100)])) + "\u00a1\u00bf\u00ba\u00aa\u20ac\u0152\u0153"
# Set by code rather than by a table.
MARKS = "\u2026\u2022\u00b7\u2030\u2013"
NUMERATOR, DENOMINATOR = 0xE000, 0xE010  # private code points of the small figures
SMALL = 0.70  # of a figure's height
LINE = 1.3
MADE = "\u2212\u2248"


def ranges(characters):
    """Inclusive pairs of code points."""
    pairs = []
    for code in sorted(set(map(ord, characters))):
        if pairs and code == pairs[-1][1] + 1:
            pairs[-1][1] = code
        else:
            pairs.append([code, code])
    return pairs


def add_glyph(font, code, name, advance, draw):
    pen = TTGlyphPen(None)
    draw(pen)
    font["glyf"][name] = pen.glyph()
    font["glyf"][name].recalcBounds(font["glyf"])
    font["hmtx"][name] = (advance, font["glyf"][name].xMin)
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[code] = name


def placed(font, source, parts):
    """Draws glyph `source` once for each (scale x, scale y, dx, dy)."""
    recorded = DecomposingRecordingPen(font.getGlyphSet())
    font.getGlyphSet()[source].draw(recorded)

    def draw(pen):
        for sx, sy, dx, dy in parts:
            recorded.replay(TransformPen(pen, (sx, 0, 0, sy, dx, dy)))

    return draw


def add_small_figures(font):
    cmap, cap = font.getBestCmap(), font["OS/2"].sCapHeight
    for digit in range(10):
        source = cmap[ord("0") + digit]
        advance = round(font["hmtx"][source][0] * SMALL)
        up = cap * (1 - SMALL) + 0.03 * cap
        down = -0.06 * cap
        add_glyph(font, NUMERATOR + digit, f"up{digit}", advance, placed(font, source, [(SMALL, SMALL, 0, up)]))
        add_glyph(font, DENOMINATOR + digit, f"down{digit}", advance, placed(font, source, [(SMALL, SMALL, 0, down)]))


def add_minus(font):
    plus = font.getBestCmap()[ord("+")]
    glyph = font["glyf"][plus]
    ys = sorted({y for _, y in glyph.getCoordinates(font["glyf"])[0]})
    bottom, top = ys[1], ys[-2]

    def bar(pen):
        pen.moveTo((glyph.xMin, bottom))
        pen.lineTo((glyph.xMin, top))
        pen.lineTo((glyph.xMax, top))
        pen.lineTo((glyph.xMax, bottom))
        pen.closePath()

    add_glyph(font, 0x2212, "minus_made", font["hmtx"][plus][0], bar)


def add_about(font):
    tilde = font.getBestCmap()[ord("~")]
    parts = [(1, 1, 0, 105), (1, 1, 0, -105)]
    add_glyph(font, 0x2248, "about_made", font["hmtx"][tilde][0], placed(font, tilde, parts))


def make(path, characters):
    """Returns (bytes, characters that the font lacks)."""
    font = TTFont(path)
    cmap = font.getBestCmap()
    lacking = sorted(c for c in set(characters) if ord(c) not in cmap and c not in MADE)
    add_small_figures(font)
    add_minus(font)
    add_about(font)
    options = Options()
    options.layout_features = []
    options.hinting = False
    options.glyph_names = False
    options.legacy_kern = False
    options.notdef_outline = True
    options.name_IDs = [0, 2, 6, 13, 14]  # copyright and licence stay, and the names by which a PDF knows it
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "DSIG", "STAT"]
    subsetter = Subsetter(options)
    small = [base + d for base in (NUMERATOR, DENOMINATOR) for d in range(10)]
    subsetter.populate(unicodes=list(map(ord, characters)) + small)
    subsetter.subset(font)
    em, middle = font["head"].unitsPerEm, font["OS/2"].sCapHeight / 2
    ascent = round(middle + LINE * em / 2)
    font["hhea"].ascent, font["hhea"].descent, font["hhea"].lineGap = ascent, ascent - round(LINE * em), 0
    font["head"].modified = font["head"].created  # the same bytes every time
    font.recalcTimestamp = False
    out = io.BytesIO()
    font.save(out)
    return out.getvalue(), lacking


def widths(path, characters):
    """Advance of each character that the font has, in thousandths of an em."""
    font = TTFont(path)
    add_minus(font)
    add_about(font)
    cmap, em = font.getBestCmap(), font["head"].unitsPerEm
    return {ord(c): round(font["hmtx"][cmap[ord(c)]][0] * 1000 / em) for c in set(characters) if ord(c) in cmap}


def letters(regular, bold):
    rows = ", ".join(f"{{0x{c:04X}, {w}, {bold.get(c, 0)}}}" for c, w in sorted(regular.items()))
    return LETTERS.format(count=len(regular), rows=rows, small=SMALL)


def array(name, data):
    lines = (",".join(map(str, data[i:i + 32])) for i in range(0, len(data), 32))
    return f"alignas(4) const unsigned char {name}[{len(data)}] = {{\n" + ",\n".join(lines) + "};\n"


def pair_list(name, pairs):
    codes = ", ".join(f"0x{a:04X}, 0x{b:04X}" for a, b in pairs)
    return f"const unsigned short {name}[] = {{{codes}, 0}};\n"


HEADER = """#pragma once
// Made by cmake/make_font.py.
namespace bentbook::screens {{

extern const unsigned char kRegularFont[{regular}];
extern const unsigned char kBoldFont[{bold}];
/// Pairs of code points, ended by 0: figures, marks and units; every letter of the string tables; all that a person may
/// type as well.
extern const unsigned short kFigureGlyphs[];
extern const unsigned short kTextGlyphs[];
extern const unsigned short kTypedGlyphs[];

}}  // namespace bentbook::screens
"""


LETTERS = """#pragma once
// Made by cmake/make_font.py.
namespace bentbook::paper {{

/// A letter's advance in the regular and in the bold face, thousandths of an em; 0: the face does not have it.
struct Letter {{
  unsigned short code, regular, bold;
}};
inline constexpr Letter kLetters[{count}] = {{{rows}}};
/// Figures of fractions, of the others' height.
inline constexpr double kSmallFigure = {small};

}}  // namespace bentbook::paper
"""


def main():
    out, fonts = Path(sys.argv[1]), Path(sys.argv[2])
    languages, tables, errors = read_strings(Path(sys.argv[3]))
    used = {}
    for (tag, own_name, _), rows in zip(languages, tables):
        for name, text in [("languages.tsv", own_name)] + [(name, row[0]) for name, row in rows.items()]:
            for character in text:
                used.setdefault(character, f"{tag}: {name}")
    figures = FIGURES + UNITS
    text = "".join(used) + figures + MARKS
    typed = text + TYPED
    regular, lacking = make(fonts / "NotoSans-Regular.ttf", typed)
    bold, lacking_bold = make(fonts / "NotoSans-Bold.ttf", text)
    for character in sorted(set(lacking) | set(lacking_bold)):
        errors.append(f"no glyph for U+{ord(character):04X} '{character}', used in {used.get(character, 'make_font.py')}")
    if errors:
        for error in errors:
            print(f"fonts: {error}", file=sys.stderr)
        return 1
    small = "".join(chr(base + d) for base in (NUMERATOR, DENOMINATOR) for d in range(10))
    source = ["// Made by cmake/make_font.py.\n#include \"ui/fonts.gen.h\"\n\nnamespace bentbook::screens {\n\n"]
    source += [array("kRegularFont", regular), array("kBoldFont", bold)]
    source += [pair_list("kFigureGlyphs", ranges(figures + small)), pair_list("kTextGlyphs", ranges(text + small)),
               pair_list("kTypedGlyphs", ranges(typed + small)), "\n}  // namespace bentbook::screens\n"]
    out.mkdir(parents=True, exist_ok=True)
    (out / "fonts.gen.h").write_text(HEADER.format(regular=len(regular), bold=len(bold)), encoding="utf-8")
    (out / "fonts.gen.cpp").write_text("".join(source), encoding="utf-8")
    if len(sys.argv) > 4:
        own = Path(sys.argv[4])
        own.mkdir(parents=True, exist_ok=True)
        table = letters(widths(fonts / "NotoSans-Regular.ttf", typed), widths(fonts / "NotoSans-Bold.ttf", text))
        (own / "letters.gen.h").write_text(table, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
