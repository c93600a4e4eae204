import { domainDistance } from "../../published/index.ts";
import type { Problem } from "../contract.ts";
import type { DerivativesInput } from "./derivatives-schema.ts";
import type { LinearisedFlight } from "./from-derivatives.ts";
import { modeOutputs, neutralPoints, noMotion, systemOf } from "./mode-rows.ts";
import type { StabilityCondition, StabilityOutputs } from "./output-schema.ts";
import { responsesTo } from "./response.ts";
import type { StabilityInputs } from "./schema.ts";

/** Modes, margins and response of flights whose derivatives are given, or why there are none. */
export function derivativesOutputs(
  flights: readonly LinearisedFlight[],
  derivatives: DerivativesInput,
  inputs: StabilityInputs,
): StabilityOutputs | Problem {
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
  const motions = [
    ...(flight.longitudinal ? [{ group: "longitudinal", motion: flight.longitudinal.motion }] : []),
    ...(flight.lateral ? [{ group: "lateral", motion: flight.lateral.motion }] : []),
  ];
  const response = responsesTo(motions, inputs);
  if (!response) return notFinite(flight);
  return {
    along: "factor",
    conditions,
    chosen,
    lanchesterPeriod: flight.longitudinal ? (Math.PI * Math.SQRT2 * flight.airspeed) / derivatives.gravity : null,
    response,
    manoeuvres: [],
    centre: null,
    domain: domainDistance("stability", {}),
  };
}

function notFinite({ at }: LinearisedFlight): Problem {
  return {
    kind: "motion-not-finite",
    message: `The motion at factor ${at} is too large for numbers: these derivatives belong to no aircraft.`,
  };
}

function conditionOf({ at, airspeed, longitudinal, lateral, pitchRadiusSquared }: LinearisedFlight): StabilityCondition | undefined {
  const motions = [longitudinal?.motion, lateral?.motion].filter((motion) => motion !== undefined);
  const modes = modeOutputs(motions);
  if (!modes) return undefined;
  const d = longitudinal?.derivatives;
  const neutral = d ? neutralPoints(d, pitchRadiusSquared) : { incidence: null, speed: null };
  return {
    ...noMotion,
    at,
    airspeed,
    mode: null,
    problem: null,
    modes,
    stable: modes.every(({ real }) => real < 0),
    incidenceMoment: d ? d.mw : null,
    speedMoment: d ? d.mu : null,
    incidenceMargin: neutral.incidence,
    speedMargin: neutral.speed,
    coupling: motions.length === 2 ? 0 : null,
    systems: motions.map(systemOf),
  };
}
