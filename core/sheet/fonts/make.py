"""Makes the two embedded fonts from Lato 2.007 (Debian package fonts-lato).

Keeps the Latin script with its accents, typographic punctuation, units and
arrows, and the kerning; drops hinting and every substitution, so that each
glyph stands for one character and text copied from a sheet reads true. Where
two characters share a glyph the plain one is kept. The name "Lato" is reserved
by its licence, so the modified version carries a name of its own. The TTF is
measured with and goes into a PDF; the WOFF2 of the same goes into an SVG.

Run with Debian's fonttools and python3-brotli:  /usr/bin/python3 make.py
"""
from fontTools import subset
from fontTools.ttLib import TTFont

RANGES = [(0x20, 0x7E), (0xA1, 0xAC), (0xAE, 0x17F), (0x1A0, 0x1A1), (0x1AF, 0x1B0),
          (0x1CD, 0x1DC), (0x1E6, 0x1E7), (0x1EA, 0x1EB), (0x1FA, 0x1FF), (0x218, 0x21B),
          (0x2C6, 0x2C7), (0x2D8, 0x2DD), (0x300, 0x304), (0x306, 0x30C), (0x323, 0x328),
          (0x1E80, 0x1E85), (0x1E9E, 0x1E9E), (0x1EA0, 0x1EF9), (0x2010, 0x2015),
          (0x2018, 0x201E), (0x2020, 0x2022), (0x2026, 0x2026), (0x2030, 0x2030),
          (0x2032, 0x2033), (0x2039, 0x203A), (0x2044, 0x2044), (0x2070, 0x2070), (0x2074, 0x2079),
          (0x2080, 0x2089), (0x20AC, 0x20AC), (0x2116, 0x2116), (0x2122, 0x2122),
          (0x2190, 0x2193), (0x2212, 0x2212), (0x2248, 0x2248), (0x2260, 0x2260),
          (0x2264, 0x2265), (0x3C0, 0x3C1), (0x25CA, 0x25CA)]

for weight in ("Regular", "Bold"):
    font = TTFont(f"/usr/share/fonts/truetype/lato/Lato-{weight}.ttf", recalcTimestamp=False)
    font["head"].created = font["head"].modified
    cmap, kept, seen = font.getBestCmap(), [], set()
    for lo, hi in RANGES:
        for c in range(lo, hi + 1):
            if c in cmap and cmap[c] not in seen:
                seen.add(cmap[c])
                kept.append(c)
    opts = subset.Options(hinting=False, layout_features=["kern"], name_IDs=[0, 1, 2, 4, 5, 6, 13, 14],
                          notdef_outline=True, glyph_names=False, desubroutinize=True)
    opts.drop_tables += ["DSIG", "GDEF", "gasp", "meta"]
    s = subset.Subsetter(opts)
    s.populate(unicodes=kept)
    s.subset(font)
    for r in list(font["name"].names):
        if r.platformID != 3:
            font["name"].removeNames(r.nameID, r.platformID)
            continue
        if r.nameID in (1, 4):
            r.string = "Moldwright Sans" + ("" if r.nameID == 1 else " " + weight)
        if r.nameID == 6:
            r.string = f"MoldwrightSans-{weight}"
    font.save(f"MoldwrightSans-{weight}.ttf")
    font.flavor = "woff2"
    font.save(f"MoldwrightSans-{weight}.woff2")
    print(weight, len(kept), "characters")
