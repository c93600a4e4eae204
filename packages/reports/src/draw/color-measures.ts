/** Measures of colors for tests of the tokens: contrast, distance, simulated sight. */

type Triple = readonly [number, number, number];
export type Sight = "protan" | "deutan" | "tritan";
export const deficiencies: readonly Sight[] = ["protan", "deutan", "tritan"];

/** Contrast ratio of two colors, 1 to 21. @source wcag-2.2, relative luminance and contrast ratio, from memory */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(hex: string): number {
  const [red, green, blue] = linear(hex);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Full deficiency over linear sRGB. @source machado-2009, matrices of severity 1.0, from memory */
const sightMatrices: Readonly<Record<Sight, readonly [Triple, Triple, Triple]>> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** A color as somebody with a full deficiency sees it, as L*a*b*. */
export function seenWith(sight: Sight, hex: string): Triple {
  const color = linear(hex);
  const seen = sightMatrices[sight].map((row) => Math.min(1, Math.max(0, row[0] * color[0] + row[1] * color[1] + row[2] * color[2])));
  return labOf(seen as unknown as Triple);
}

/** CIEDE2000 distance of two colors, given as sRGB or as L*a*b* (D65). */
export function colorDistance(first: string | Triple, second: string | Triple): number {
  const [[l1, a1, b1], [l2, a2, b2]] = [first, second].map((color) => (typeof color === "string" ? labOf(linear(color)) : color)) as [
    Triple,
    Triple,
  ];
  const stretch = 0.5 * (1 - Math.sqrt(seventh((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2)));
  const [x1, x2] = [a1 * (1 + stretch), a2 * (1 + stretch)];
  const [c1, c2] = [Math.hypot(x1, b1), Math.hypot(x2, b2)];
  const [h1, h2] = [hue(x1, b1), hue(x2, b2)];
  const turn = c1 * c2 === 0 ? 0 : turned(h2 - h1);
  const differences = { lightness: l2 - l1, chroma: c2 - c1, hue: 2 * Math.sqrt(c1 * c2) * Math.sin(radians(turn) / 2) };
  const meanHue = c1 * c2 === 0 ? h1 + h2 : middleHue(h1, h2);
  return weighted(differences, { lightness: (l1 + l2) / 2, chroma: (c1 + c2) / 2, hue: meanHue });
}

interface Parts {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
}

function weighted(difference: Parts, mean: Parts): number {
  const t =
    1 -
    0.17 * Math.cos(radians(mean.hue - 30)) +
    0.24 * Math.cos(radians(2 * mean.hue)) +
    0.32 * Math.cos(radians(3 * mean.hue + 6)) -
    0.2 * Math.cos(radians(4 * mean.hue - 63));
  const lightness = difference.lightness / (1 + (0.015 * (mean.lightness - 50) ** 2) / Math.sqrt(20 + (mean.lightness - 50) ** 2));
  const chroma = difference.chroma / (1 + 0.045 * mean.chroma);
  const hueShare = difference.hue / (1 + 0.015 * mean.chroma * t);
  const rotation = -Math.sin(radians(60 * Math.exp(-(((mean.hue - 275) / 25) ** 2)))) * 2 * Math.sqrt(seventh(mean.chroma));
  return Math.sqrt(lightness ** 2 + chroma ** 2 + hueShare ** 2 + rotation * chroma * hueShare);
}

function seventh(chroma: number): number {
  return chroma ** 7 / (chroma ** 7 + 25 ** 7);
}

function hue(a: number, b: number): number {
  return ((((Math.atan2(b, a) * 180) / Math.PI) % 360) + 360) % 360;
}

function turned(difference: number): number {
  if (difference > 180) return difference - 360;
  return difference < -180 ? difference + 360 : difference;
}

function middleHue(h1: number, h2: number): number {
  if (Math.abs(h1 - h2) <= 180) return (h1 + h2) / 2;
  return h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function linear(hex: string): Triple {
  const channel = (start: number) => {
    const value = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** L*a*b* for D65 white from linear sRGB (IEC 61966-2-1 primaries). */
function labOf([red, green, blue]: Triple): Triple {
  const cubic = (value: number) => (value > (6 / 29) ** 3 ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = cubic((0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047);
  const y = cubic(0.2126729 * red + 0.7151522 * green + 0.072175 * blue);
  const z = cubic((0.0193339 * red + 0.119192 * green + 0.9503041 * blue) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
