import { type PublishedBand, publishedBand } from "../../published/index.ts";
import type { Warning } from "../contract.ts";
import { type DomainFields, domainCoordinates } from "./domain-coordinates.ts";
import type { RotorMeasures } from "./output-schema.ts";
import type { RotorPointInputs } from "./solution.ts";

/**
 * What published errors say about the airspeed at which the air turns a rotor under a given thrust. Without shaft torque everything
 * goes with the airspeed squared, so thrust that is off by a factor means an airspeed that is off by its square root, the other way.
 */
const airspeedRules = [
  { field: "airspeed", exponent: 1 },
  { field: "ct", exponent: -0.5 },
] as const;

/** Below this airspeed there is nothing to put a band around [m/s]. */
const stillAir = 1e-3;

/** A solved point, as far as a band needs it. */
type DescribedPoint = DomainFields & Pick<RotorMeasures, "airspeed">;

/** Band around an airspeed that was found; null when it was given, or no published check says anything about it. */
export function airspeedBand(measures: DescribedPoint, inputs: RotorPointInputs): PublishedBand | null {
  if (!searchesAirspeed(inputs) || measures.airspeed <= stillAir) return null;
  return publishedBand("rotor", domainCoordinates(measures), measures.airspeed, airspeedRules);
}

/** Whether an autorotating rotor was asked for the airspeed at which it carries a thrust. */
function searchesAirspeed(inputs: RotorPointInputs): boolean {
  const { airspeed, advanceRatio, climbRate, rotationRate, tipSpeed, thrust, lift, ct, shaftTorque, power } = inputs;
  const loaded = thrust !== undefined || lift !== undefined || ct !== undefined;
  const ratioAndSpeed = advanceRatio !== undefined && (rotationRate !== undefined || tipSpeed !== undefined);
  const free = airspeed === undefined && climbRate === undefined && !ratioAndSpeed;
  return free && loaded && (shaftTorque === 0 || power === 0);
}

/** What the bands of some points stand on: of several points told of the first that has one, or that should. */
export function bandNotes(points: readonly { readonly measures: DescribedPoint; readonly inputs: RotorPointInputs }[]): readonly Warning[] {
  const sought = points.filter(({ inputs }) => searchesAirspeed(inputs));
  const [first] = sought.map(({ measures, inputs }) => airspeedBand(measures, inputs));
  if (first === undefined) return [];
  const of = sought.length > 1 ? `Of the first of ${sought.length} points: ` : "";
  return [{ grade: "note", kind: "airspeed-band", message: `${of}${bandText(first)}` }];
}

function bandText(band: PublishedBand | null): string {
  const [decisive] = band?.errors ?? [];
  if (!decisive) return "No published check of such a state says how far the airspeed may be off: it has no band.";
  const { title, quantity, factor, distance } = decisive;
  const error = `The airspeed has a band of the largest error of ${title} (${quantity}), a factor of ${factor.toFixed(2)}`;
  return distance > 0
    ? `${error}, widened for lying ${distance.toPrecision(2)} widths outside its range and taken either way. It says what is not known and is no statistical bound.`
    : `${error} taken either way. The state lies in the range of that check: the band holds the error that is known there and foresees none.`;
}
