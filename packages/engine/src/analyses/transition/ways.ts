import type { FullTrimmer } from "../../equilibrium/index.ts";
import { flyTransition, type TransitionPlan, type TransitionSample, type TransitionWay, transitionPlan } from "../../motion/index.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { historyRows, plannedSamples } from "./history.ts";
import { limitsUsed } from "./limits-used.ts";
import type { Meeting } from "./meeting.ts";
import type { WayOutputs } from "./output-schema.ts";
import type { TransitionInputs } from "./schema.ts";
import { energyOutputs, waySummary } from "./summary.ts";
import { type SupplyMoment, supplyAlong } from "./supply.ts";

export const bothWays: readonly TransitionWay[] = ["hover to cruise", "cruise to hover"];

/** Time between two moments of a flown history [s]. */
const sampleInterval = 0.1;

export function noWay(way: TransitionWay, refusal: string): WayOutputs {
  return { way, flown: false, refusal, summary: null, limits: [], energy: null, rows: [] };
}

/** The reference of one way, or why there is none. */
export function planOf(trimmer: FullTrimmer, way: TransitionWay, meeting: Meeting, inputs: TransitionInputs): TransitionPlan | string {
  const { hover, cruise, meetSpeed } = meeting;
  if (!hover || !cruise || meetSpeed === undefined) return meeting.refusal ?? "its ends are not known";
  const plan = transitionPlan(trimmer, { way, hover, cruise, meetSpeed, acceleration: inputs.acceleration });
  return "kind" in plan ? plan.reason : plan;
}

/** One way through its trims alone. */
export function plannedWay(
  flight: FullFlight,
  trimmer: FullTrimmer,
  plan: TransitionPlan,
  inputs: TransitionInputs,
  refusal: string,
): WayOutputs {
  const samples = plannedSamples(plan);
  const supply = supplyOf(flight, plan, samples, inputs);
  return {
    ...noWay(plan.way, refusal),
    limits: limitsUsed(limitSetting(flight, inputs), samples, supply, leastMargins(plan)),
    rows: historyRows(trimmer.airframe, samples, supply, 1),
  };
}

/** One way flown. */
export function flownWay(
  flight: FullFlight,
  trimmer: FullTrimmer,
  plan: TransitionPlan,
  inputs: TransitionInputs,
  cancelled: () => void,
): WayOutputs {
  const trace = flyTransition(trimmer, plan, cancelled);
  if ("kind" in trace) {
    const reason = `no linear feedback holds it at ${trace.airspeed.toFixed(1)} m/s: the reference controller cannot be made`;
    return plannedWay(flight, trimmer, plan, inputs, reason);
  }
  const { samples } = trace;
  const supply = supplyOf(flight, plan, samples, inputs);
  const rows = historyRows(trimmer.airframe, samples, supply, Math.max(1, Math.round(inputs.rowInterval / sampleInterval)));
  // Of a flight that was lost the limits say nothing: those of its reference do.
  if (trace.stopped !== undefined) return { ...plannedWay(flight, trimmer, plan, inputs, trace.stopped), rows };
  return {
    way: plan.way,
    flown: true,
    refusal: null,
    summary: waySummary(plan, trace, supply),
    limits: limitsUsed(limitSetting(flight, inputs), samples, supply, leastMargins(plan)),
    energy: energyOutputs(trace),
    rows,
  };
}

const limitSetting = ({ definition, conditions }: FullFlight, { heightBand }: TransitionInputs) => ({
  aircraft: definition,
  airTemperature: conditions.air.temperature,
  heightBand,
});

function supplyOf(
  { definition, conditions }: FullFlight,
  plan: TransitionPlan,
  samples: readonly TransitionSample[],
  inputs: TransitionInputs,
): SupplyMoment[] {
  return supplyAlong(
    {
      aircraft: definition,
      blocks: conditions.loading.blocks,
      airTemperature: conditions.air.temperature,
      cells: {
        temperature: inputs.cellTemperature,
        capacityFactor: inputs.cellCapacityFactor,
        resistanceFactor: inputs.cellResistanceFactor,
      },
      stateOfCharge: plan.way === "hover to cruise" ? inputs.chargeOut : inputs.chargeBack,
    },
    samples,
  );
}

/** Least stall margin of every rotor over the trims of a reference. */
function leastMargins({ knots, rotors }: TransitionPlan): number[] {
  return rotors.map((_, i) => Math.min(...knots.map(({ trimmed }) => trimmed.stallMargins[i] ?? Number.POSITIVE_INFINITY)));
}
