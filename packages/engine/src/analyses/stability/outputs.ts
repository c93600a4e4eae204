import { type LinearMotion, linearResponse, type Mode, modesOf } from "../../motion/index.ts";
import { domainDistance } from "../../published/index.ts";
import type { Problem } from "../contract.ts";
import type { LinearisedFlight } from "./from-derivatives.ts";
import type { ModeOutput, StabilityCondition, StabilityOutputs } from "./output-schema.ts";
import type { StabilityInputs } from "./schema.ts";

/** Points of the response. */
const responseSteps = 200;

/** Modes, margins and response of linearised flights, or why there are none. */
export function stabilityOutputsOf(flights: readonly LinearisedFlight[], inputs: StabilityInputs): StabilityOutputs | Problem {
  const conditions: StabilityCondition[] = [];
  for (const flight of flights) {
    const condition = conditionOf(flight);
    if (!condition) return notFinite(flight);
    conditions.push(condition);
  }
  const chosen = Math.max(
    0,
    flights.findIndex(({ at }) => at === 1),
  );
  const flight = flights[chosen] as LinearisedFlight;
  const response = responseOf(flight, inputs);
  if (!response) return notFinite(flight);
  return {
    along: "factor",
    conditions,
    chosen,
    lanchesterPeriod: flight.longitudinal ? (Math.PI * Math.SQRT2 * flight.airspeed) / inputs.derivatives.gravity : null,
    response,
    domain: domainDistance("stability", {}),
  };
}

function notFinite({ at }: LinearisedFlight): Problem {
  return {
    kind: "motion-not-finite",
    message: `The motion at ${at} is too large for numbers: the derivatives do not belong to an aircraft.`,
  };
}

function conditionOf({ at, airspeed, longitudinal, lateral, pitchRadiusSquared }: LinearisedFlight): StabilityCondition | undefined {
  const motions = [longitudinal?.motion, lateral?.motion].filter((motion) => motion !== undefined);
  const modes: ModeOutput[] = [];
  for (const motion of motions) {
    const found = modesOf(motion);
    if (!found) return undefined;
    modes.push(...found.map((mode) => modeOutputOf(mode, motion)));
  }
  modes.sort((a, b) => b.naturalFrequency - a.naturalFrequency);
  const d = longitudinal?.derivatives;
  // Moving the centre of gravity aft by x, trimmed again, adds −x Z_w (mass over I_y) to M_w: where M_w vanishes lies the neutral point
  // of incidence, where Z_u M_w − M_u Z_w vanishes that of speed.
  const aft = (moment: number, force: number): number | null => {
    const length = (moment / force) * (pitchRadiusSquared ?? Number.NaN);
    return Number.isFinite(length) ? length : null;
  };
  return {
    at,
    airspeed,
    modes,
    stable: modes.every(({ real }) => real < 0),
    incidenceMoment: d ? d.mw : null,
    speedMoment: d ? d.mu : null,
    incidenceMargin: d ? aft(d.mw, d.zw) : null,
    speedMargin: d ? aft(d.mw - (d.mu * d.zw) / d.zu, d.zw) : null,
    systems: motions.map(({ states, matrix }) => ({
      states: states.map(({ id }) => id),
      matrix: states.map((_, i) => [...matrix.subarray(i * states.length, (i + 1) * states.length)]),
    })),
  };
}

function modeOutputOf({ participation, ...mode }: Mode, { states }: LinearMotion): ModeOutput {
  const shares = (participation ?? []).map((share, i) => ({ state: states[i]?.id ?? "", share }));
  return { ...mode, participation: shares.sort((a, b) => b.share - a.share) };
}

function responseOf(flight: LinearisedFlight, { disturbance }: StabilityInputs): StabilityOutputs["response"] | undefined {
  const starts = [
    // A gust from below is a motion of the aircraft down through the air, one from the right a motion to the right.
    { group: "longitudinal", motion: flight.longitudinal?.motion, start: [0, disturbance.vertical, 0, 0] },
    { group: "lateral", motion: flight.lateral?.motion, start: [disturbance.side, 0, 0, 0] },
  ];
  const found: StabilityOutputs["response"] = [];
  for (const { group, motion, start } of starts) {
    if (!motion) continue;
    const { times, states } = linearResponse(motion, start, disturbance.duration, responseSteps);
    // What grows beyond all numbers is shown as far as it has some.
    const end = times.findIndex((_, k) => states.some((values) => !Number.isFinite(values[k])));
    const kept = end < 0 ? times.length : end;
    if (kept < 2) return undefined;
    found.push({
      group,
      times: times.slice(0, kept),
      states: motion.states.map(({ id }, i) => ({ state: id, values: (states[i] ?? []).slice(0, kept) })),
    });
  }
  return found;
}
