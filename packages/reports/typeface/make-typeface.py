"""Makes the static fonts of the dossier from the variable ones of the page.

Typst reads static TrueType; the page's typeface comes as variable WOFF2 in subsets. This cuts three weights out of the
subsets, joins them, gives them the narrow no-break space that the family lacks, and writes them as a
TypeScript module, so that the bundled program carries them along.

Needs Debian's python3-fonttools and python3-brotli:  /usr/bin/python3 packages/reports/typeface/make-typeface.py
"""

import base64
import io
import pathlib
import tempfile

from fontTools.merge import Merger
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

root = pathlib.Path(__file__).resolve().parents[3]
files = root / "node_modules/@fontsource-variable/ysabeau-office/files"
target = root / "packages/reports/src/dossier/typeface.data.ts"
family = "Ysabeau Office"
subsets = ["latin", "latin-ext", "greek", "math", "symbols"]
styles = {"regular": 450, "medium": 500, "bold": 650}


def static(subset, weight, folder):
    font = TTFont(files / f"ysabeau-office-{subset}-wght-normal.woff2")
    font.flavor = None
    font = instantiateVariableFont(font, {"wght": weight})
    keep = Options()
    keep.layout_features = ["kern", "mark", "mkmk", "tnum", "lnum"]
    keep.notdef_outline = True
    keep.hinting = False
    cut = Subsetter(keep)
    cut.populate(unicodes=list(font.getBestCmap()))
    cut.subset(font)
    for tag in ("STAT", "GSUB", "GPOS") if subset != "latin" else ("STAT", "GSUB"):
        if tag in font:
            del font[tag]
    path = folder / f"{subset}.ttf"
    font.save(path)
    return str(path)


def joined(weight, shown_weight, name):
    with tempfile.TemporaryDirectory() as folder:
        paths = [static(subset, weight, pathlib.Path(folder)) for subset in subsets]
        font = Merger().merge(paths)
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[0x202F] = table.cmap[0x2009]
    font["OS/2"].usWeightClass = shown_weight
    names = font["name"]
    for record in list(names.names):
        if record.nameID in (1, 2, 3, 4, 6, 16, 17, 25):
            names.removeNames(nameID=record.nameID)
    for identifier, text in ((1, f"{family} {name}" if name != "regular" else family), (2, "Regular"), (16, family), (17, name.capitalize()),
                             (4, f"{family} {name}"), (6, f"YsabeauOffice-{name.capitalize()}"), (3, f"YsabeauOffice-{name}")):
        names.setName(text, identifier, 3, 1, 0x409)
    font["head"].created = font["head"].modified = 0
    font.recalcTimestamp = False
    out = io.BytesIO()
    font.save(out)
    return out.getvalue()


lines = [
    "// Made by packages/reports/typeface/make-typeface.py; do not edit.",
    "// Ysabeau Office, Copyright 2023 The Ysabeau Project Authors, SIL Open Font License 1.1: see packages/reports/typeface/OFL.txt.",
    "",
    "/** Static cuts of the page's typeface as base64 of TrueType files. */",
    "export const typefaceCuts: readonly string[] = [",
]
for (name, weight), shown in zip(styles.items(), (400, 500, 700)):
    data = joined(weight, shown, name)
    print(name, len(data))
    lines.append(f'  "{base64.b64encode(data).decode()}",')
lines += ["];", ""]
target.write_text("\n".join(lines))
