import { type PropellerCondition, type PropellerSource, propellerCoefficients } from "../../aerodynamics/propeller/index.ts";
import type { PropellerOutputs } from "./output-schema.ts";

type Curve = Pick<PropellerOutputs, "curve" | "peakEfficiency" | "peakEfficiencyAdvanceRatio" | "zeroThrustAdvanceRatio">;

const steps = 32;
const largestAdvanceRatio = 6;
const searchStep = 0.1;
const halvings = 30;

/** Nothing turns, or nothing is known where it turns. */
const noCurve: Curve = {
  curve: { rotationRate: null, advanceRatio: [], ct: [], cp: [], efficiency: [] },
  peakEfficiency: null,
  peakEfficiencyAdvanceRatio: null,
  zeroThrustAdvanceRatio: null,
};

/**
 * Coefficients in axial flow from rest to zero thrust at one rotation rate, with the largest efficiency: the highest of the points
 * of the curve, made finer by the parabola through it and its neighbours.
 */
export function propellerCurve(source: PropellerSource, at: PropellerCondition | undefined): Curve {
  if (!at || at.rotationRate <= 0) return noCurve;
  const { air, rotationRate } = at;
  const coefficientsAt = (advanceRatio: number) => {
    const airspeed = (advanceRatio * rotationRate * source.diameter) / (2 * Math.PI);
    const loads = source.loadsAt({ rotationRate, airspeed, inflowAngle: 0, air });
    if (loads.kind !== "solved" || loads.extrapolated.some((phrase) => phrase.startsWith("advance ratio"))) return undefined;
    const power = loads.torque * rotationRate;
    return propellerCoefficients({
      thrust: loads.thrust,
      power,
      rotationRate,
      airspeed,
      inflowAngle: 0,
      diameter: source.diameter,
      density: air.density,
    });
  };
  const thrustAt = (advanceRatio: number): number | undefined => coefficientsAt(advanceRatio)?.ct ?? undefined;
  const { end, crosses } = endOfThrust(thrustAt);
  const found = Array.from({ length: steps + 1 }, (_, i) => (end * i) / steps).flatMap((place) => {
    const one = end > 0 || place === 0 ? coefficientsAt(place) : undefined;
    return one ? [{ place, ct: one.ct ?? 0, cp: one.cp ?? 0, efficiency: one.efficiency }] : [];
  });
  if (found.length === 0) return noCurve;
  return {
    curve: {
      rotationRate,
      advanceRatio: found.map(({ place }) => place),
      ct: found.map(({ ct }) => ct),
      cp: found.map(({ cp }) => cp),
      efficiency: found.map(({ efficiency }) => efficiency),
    },
    ...peakOf(found),
    zeroThrustAdvanceRatio: crosses ? end : null,
  };
}

/** Where thrust vanishes, or the last place at which it is known. */
function endOfThrust(thrustAt: (advanceRatio: number) => number | undefined): { readonly end: number; readonly crosses: boolean } {
  let low = 0;
  let high = 0;
  let crosses = false;
  for (let place = searchStep; place <= largestAdvanceRatio; place += searchStep) {
    const thrust = thrustAt(place);
    high = place;
    if (thrust === undefined || thrust <= 0) {
      crosses = thrust !== undefined;
      break;
    }
    low = place;
  }
  for (let step = 0; step < halvings && high > low; step++) {
    const middle = (low + high) / 2;
    const thrust = thrustAt(middle);
    if (thrust !== undefined && thrust > 0) low = middle;
    else {
      crosses = thrust !== undefined;
      high = middle;
    }
  }
  return { end: low, crosses };
}

function peakOf(
  found: readonly { readonly place: number; readonly efficiency: number | null }[],
): Pick<Curve, "peakEfficiency" | "peakEfficiencyAdvanceRatio"> {
  const best = found.reduce((top, one, i) => ((one.efficiency ?? -1) > (found[top]?.efficiency ?? -1) ? i : top), 0);
  const here = found[best]?.efficiency ?? null;
  if (here === null) return { peakEfficiency: null, peakEfficiencyAdvanceRatio: null };
  const place = found[best]?.place ?? 0;
  const [before, after] = [found[best - 1], found[best + 1]];
  const bend =
    (before?.efficiency ?? null) !== null && (after?.efficiency ?? null) !== null
      ? (before?.efficiency ?? 0) - 2 * here + (after?.efficiency ?? 0)
      : 0;
  if (!(bend < 0)) return { peakEfficiency: here, peakEfficiencyAdvanceRatio: place };
  const rise = ((after?.efficiency ?? 0) - (before?.efficiency ?? 0)) / 2;
  return {
    peakEfficiency: here - rise ** 2 / (2 * bend),
    peakEfficiencyAdvanceRatio: place - (rise / bend) * ((after?.place ?? place) - place),
  };
}
