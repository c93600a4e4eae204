import naca0012 from "./data/naca-0012.json" with { type: "json" };
import naca0015 from "./data/naca-0015.json" with { type: "json" };
import { monotoneCurve } from "./monotone-curve.ts";
import type { BuiltInSectionName } from "./section-definition.ts";
import type { SectionAtReynolds } from "./section-table.ts";
import { plateMoment } from "./separated-flow.ts";

/** A symmetric section as stored: half a circle in degrees, by Reynolds number. */
interface StoredSection {
  readonly name: string;
  readonly source: string;
  readonly provenance: string;
  readonly note: string;
  readonly angles: readonly number[];
  readonly polars: readonly { readonly reynolds: number; readonly lift: readonly number[]; readonly drag: readonly number[] }[];
  readonly zeroLiftDrag: readonly { readonly reynolds: number; readonly drag: number }[];
  readonly postStall: { readonly angles: readonly number[]; readonly lift: readonly number[]; readonly drag: readonly number[] };
}

const stored: Readonly<Record<BuiltInSectionName, StoredSection>> = { "naca-0012": naca0012, "naca-0015": naca0015 };

/** Where a built-in section's numbers come from. */
export interface SectionProvenance {
  /** Key of docs/sources.bib. */
  readonly source: string;
  /** "read" or "from memory". */
  readonly provenance: string;
  readonly note: string;
}

/** Where the numbers of a built-in section come from. @derivation not a formula */
export function builtInSectionProvenance(name: BuiltInSectionName): SectionProvenance {
  const { source, provenance, note } = stored[name];
  return { source, provenance, note };
}

/** How fast Prandtl and Glauert's factor fades around the angle of largest lift [1/rad]. Chosen, as for the generic law. */
const fadeRate = 60;
const degree = Math.PI / 180;

/**
 * A built-in section at each Reynolds number it is known for, lowest first.
 *
 * Between the stored angles runs a smooth curve without overshoot. Where only the drag at zero lift is known for a Reynolds
 * number, the nearest polar is shifted in drag by the difference; post-stall values are the same at every Reynolds number.
 *
 * @derivation interpolation of stored tables; the shift in drag is our own
 * @source sheldahl-klimas-1981, section tables
 */
export function builtInSectionCircles(name: BuiltInSectionName): readonly SectionAtReynolds[] {
  const data = stored[name];
  const polars = data.polars.map((polar) => ({ ...polar, shift: 0 }));
  const lowest = polars[0];
  const highest = polars[polars.length - 1];
  if (!lowest || !highest) throw new Error(`section ${name} has no polars`);
  const shifted = data.zeroLiftDrag.map(({ reynolds, drag }) => {
    const nearest = reynolds < lowest.reynolds ? lowest : highest;
    return { ...nearest, reynolds, shift: drag - (nearest.drag[0] ?? 0) };
  });
  return [...shifted, ...polars].sort((a, b) => a.reynolds - b.reynolds).map((polar) => circleAt(data, polar));
}

function circleAt(data: StoredSection, polar: StoredSection["polars"][number] & { readonly shift: number }): SectionAtReynolds {
  const angles = [...data.angles, ...data.postStall.angles].map((angle) => angle * degree);
  const lifts = [...polar.lift, ...data.postStall.lift];
  const slope = (i: number, j: number): number => ((lifts[j] ?? 0) - (lifts[i] ?? 0)) / ((angles[j] ?? 0) - (angles[i] ?? 0));
  const lift = monotoneCurve(angles, lifts, [slope(0, 1), slope(angles.length - 2, angles.length - 1)]);
  const drag = monotoneCurve(angles, [...polar.drag, ...data.postStall.drag], [0, 0]);
  const stallAngle = angles[polar.lift.findIndex((value, i) => value > (polar.lift[i + 1] ?? Infinity))] ?? Math.PI / 12;
  return {
    reynolds: polar.reynolds,
    stallAngle,
    point: (alpha) => {
      const size = Math.abs(alpha);
      const attached = 1 / (1 + Math.exp(fadeRate * (size - stallAngle)));
      const total = Math.sign(alpha) * lift(size);
      // The shift in drag is skin friction: it belongs to attached flow.
      const friction = attached * polar.shift;
      return {
        attachedLift: attached * total,
        separatedLift: (1 - attached) * total,
        drag: drag(size) + friction,
        viscousDrag: attached * drag(size) + (1 - attached) * drag(0) + polar.shift,
        // Not in the source. Symmetric: none while attached.
        moment: (1 - attached) * plateMoment(alpha, total, drag(size)),
      };
    },
  };
}
