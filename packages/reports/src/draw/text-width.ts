/**
 * Advance widths [1/1000 em] of the signs from space to tilde in the page typeface, Ysabeau Office at weight 500
 * (measured with fontTools over the files of @fontsource-variable/ysabeau-office).
 */
const ascii = [
  246, 284, 448, 632, 522, 672, 690, 263, 382, 382, 472, 550, 278, 375, 256, 388, 517, 517, 517, 517, 517, 517, 517, 517, 517, 517, 256,
  282, 535, 550, 535, 365, 878, 680, 586, 653, 738, 579, 541, 721, 765, 314, 317, 622, 550, 916, 773, 790, 587, 790, 677, 524, 626, 731,
  683, 985, 633, 633, 614, 358, 388, 358, 428, 550, 268, 456, 531, 439, 531, 457, 351, 486, 537, 263, 263, 459, 248, 792, 531, 523, 530,
  526, 375, 381, 381, 524, 452, 728, 449, 469, 423, 414, 390, 414, 550,
];

const others: Readonly<Record<string, number>> = {
  "\u00a0": 246,
  "\u202f": 211,
  "±": 550,
  "×": 510,
  "·": 256,
  "°": 349,
  µ: 544,
  Ω: 771,
  "²": 332,
  "³": 310,
  "−": 550,
  "–": 550,
  "’": 255,
};

/** Signs without a measured width count as a wide capital. */
const unknownSign = 800;

/** The fallback family is wider, so boxes are kept this much wider than the typeface needs. */
const allowance = 1.08;

/** Width of one line of text at a font size [px]: an estimate that does not fall short. */
export function textWidth(text: string, size: number): number {
  let total = 0;
  for (const sign of text) total += ascii[(sign.codePointAt(0) ?? 0) - 32] ?? others[sign] ?? unknownSign;
  return (total / 1000) * size * allowance;
}

/** Breaks text into lines no wider than `width` [px] where its words allow it. */
export function wrapText(text: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}
