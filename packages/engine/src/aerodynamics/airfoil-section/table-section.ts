import { monotoneCurve } from "./monotone-curve.ts";
import type { SectionPolar } from "./section-definition.ts";
import type { SectionAtReynolds } from "./section-table.ts";
import { plateMoment, separatedFlow } from "./separated-flow.ts";

/** Beyond the last angle of a table its difference to separated flow fades over this angle. Chosen [rad]. */
const fadeAngle = Math.PI / 12;
/** How fast Prandtl and Glauert's factor fades around stall [1/rad]. Chosen, as for built-in sections. */
const fadeRate = 60;
/** Where the largest lift is looked for [rad]. */
const stallRange = Math.PI / 5;

/**
 * A polar over the full circle.
 *
 * Between the angles of the table runs a smooth curve without overshoot; beyond them the flow is separated, and what the table's
 * last value differs from that fades over 15 degrees. A table that ends at ±180 degrees is the whole circle.
 *
 * @derivation interpolation of the given polar; the completion is our own
 */
export function tableSectionCircle(polar: SectionPolar): SectionAtReynolds {
  const { angles, lift, drag, moment } = polar;
  const low = angles[0] ?? 0;
  const high = angles[angles.length - 1] ?? 0;
  const { positive, negative } = stallAngles(polar);
  const attachedShare = (alpha: number): number =>
    1 / (1 + Math.exp(fadeRate * (alpha - positive))) / (1 + Math.exp(fadeRate * (negative - alpha)));
  const curves = { lift: curve(angles, lift), drag: curve(angles, drag), moment: moment && curve(angles, moment) };
  const whole = (alpha: number) => {
    const inside = Math.min(Math.max(alpha, low), high);
    const separatedThere = separatedFlow(alpha);
    const table = { lift: curves.lift(inside), drag: curves.drag(inside) };
    // Without moments in the table: none while attached, as of a section without camber; those of separated flow after.
    const momentInside = curves.moment?.(inside) ?? (1 - attachedShare(inside)) * plateMoment(inside, table.lift, table.drag);
    if (inside === alpha) return { ...table, moment: momentInside };
    const end = separatedFlow(inside);
    const fade = fading(Math.abs(alpha - inside) / fadeAngle);
    return {
      lift: separatedThere.lift + (table.lift - end.lift) * fade,
      drag: Math.max(separatedThere.drag + (table.drag - end.drag) * fade, Math.min(table.drag, ...drag)),
      moment: separatedThere.moment + (momentInside - end.moment) * fade,
    };
  };
  const compression = 1 / Math.sqrt(1 - Math.min(polar.machNumber ** 2, 0.81));
  const friction = Math.min(...drag);
  return {
    reynolds: polar.reynoldsNumber,
    stallAngle: positive,
    point: (alpha) => {
      const at = whole(alpha);
      const attached = attachedShare(alpha);
      return {
        // The reader multiplies by the factor of its Mach number; at the table's own it finds the table again.
        attachedLift: (attached * at.lift) / compression,
        separatedLift: (1 - attached) * at.lift,
        drag: at.drag,
        viscousDrag: attached * at.drag + (1 - attached) * friction,
        moment: at.moment,
      };
    },
  };
}

function curve(angles: readonly number[], values: readonly number[]): (angle: number) => number {
  const slope = (i: number): number => ((values[i + 1] ?? 0) - (values[i] ?? 0)) / ((angles[i + 1] ?? 1) - (angles[i] ?? 0));
  return monotoneCurve(angles, values, [slope(0), slope(angles.length - 2)]);
}

/** From 1 at 0 to 0 at 1 and beyond, level at both ends. */
function fading(share: number): number {
  const t = Math.min(share, 1);
  return 1 - t * t * (3 - 2 * t);
}

/** Angles of largest and of least lift within what is usual for stall. */
function stallAngles({ angles, lift }: SectionPolar): { readonly positive: number; readonly negative: number } {
  let positive = 0;
  let negative = 0;
  let [largest, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [i, angle] of angles.entries()) {
    const value = lift[i] ?? 0;
    if (Math.abs(angle) > stallRange) continue;
    if (angle >= 0 && value > largest) [largest, positive] = [value, angle];
    if (angle <= 0 && value < least) [least, negative] = [value, angle];
  }
  return { positive: largest > 0 ? positive : 0.2, negative: least < 0 ? negative : -0.2 };
}
