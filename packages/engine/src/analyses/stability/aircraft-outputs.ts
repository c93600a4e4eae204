import { Cancelled, type Context, type Problem } from "../contract.ts";
import type { FullFlight } from "../inputs/full-flight.ts";
import { type StudiedFlight, studiedFlights } from "./from-aircraft.ts";
import { flownManoeuvres } from "./manoeuvres.ts";
import type { StabilityCondition, StabilityOutputs } from "./output-schema.ts";
import { responsesTo } from "./response.ts";
import type { StabilityInputs } from "./schema.ts";

const gravity = 9.80665;

/** Every level flight that was asked for, its modes, and the manoeuvres from those nearest to the airspeed of the manoeuvres. */
export function aircraftOutputs(
  flight: FullFlight,
  inputs: StabilityInputs,
  context: Context<StabilityOutputs>,
): StabilityOutputs | Problem {
  const airspeeds = [...new Set(inputs.airspeeds)].sort((a, b) => a - b);
  const modes = [...new Set(inputs.modes)];
  const trimmer = flight.trimmer(inputs.controls);
  const total = airspeeds.length * modes.length + modes.length;
  let done = 0;
  const each = (doing: string) => (): void => {
    if (context.cancelled()) throw new Cancelled();
    context.progress(done++, total, doing);
  };
  const studied = modes.flatMap((mode) => studiedFlights(trimmer, mode, airspeeds, each(`level flights, ${mode}`)));
  const manoeuvres = modes.flatMap((mode) => {
    each("manoeuvres")();
    const from = nearest(studied, mode, inputs.manoeuvres.airspeed);
    return from ? flownManoeuvres(trimmer.airframe, from, inputs.manoeuvres) : [];
  });
  const conditions = studied.map(({ condition }) => condition);
  const chosen = worst(conditions);
  const { motion } = studied[chosen] as StudiedFlight;
  const response = motion ? responsesTo([{ group: "all", motion }], inputs) : [];
  if (!response) return { kind: "motion-not-finite", message: "The motion about this flight grows beyond all numbers at once." };
  const speed = conditions[chosen]?.airspeed ?? 0;
  return {
    along: "airspeed",
    conditions,
    chosen,
    lanchesterPeriod: speed > 0 && motion ? (Math.PI * Math.SQRT2 * speed) / gravity : null,
    response,
    manoeuvres,
    centre: trimmer.airframe.conditions.mass.centre.x,
    // What was compared are aeroplanes with given derivatives: that says nothing about the derivatives of this aircraft.
    domain: { distance: null, nearest: null, outside: [] },
  };
}

function nearest(studied: readonly StudiedFlight[], mode: string, airspeed: number): StudiedFlight | undefined {
  let best: StudiedFlight | undefined;
  for (const flight of studied) {
    if (flight.condition.mode !== mode || !flight.trimmed) continue;
    const closer = !best || Math.abs(flight.condition.airspeed - airspeed) < Math.abs(best.condition.airspeed - airspeed);
    if (closer) best = flight;
  }
  return best;
}

/** The condition with the fastest growth, or the slowest decay; the first where there is none at all. */
function worst(conditions: readonly StabilityCondition[]): number {
  let chosen = 0;
  let most = Number.NEGATIVE_INFINITY;
  conditions.forEach(({ modes }, i) => {
    const growth = Math.max(Number.NEGATIVE_INFINITY, ...modes.map(({ real }) => real));
    if (growth > most) [most, chosen] = [growth, i];
  });
  return chosen;
}
