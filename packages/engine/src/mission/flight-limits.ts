import type { FlightRow, FlownFlight } from "./flight.ts";
import type { FlightState } from "./flight-state.ts";
import type { NamedLimit } from "./power-source.ts";

/** A limit with the largest share of it that a flight uses, and where. */
export interface FlightLimit extends NamedLimit {
  /** Used share; 1 is the limit itself [1]. */
  readonly share: number;
  readonly side: "upper" | "lower";
  readonly where: string;
}

export interface LimitBounds {
  /** Limits of every trimmed flight, in the order of its shares. */
  readonly trimLimits: readonly NamedLimit[];
  /** [V] */
  readonly cutoffVoltage: number;
  /** [m] above mean sea level. */
  readonly altitudeMaximum: number;
  /** Commanded airspeed by leg number [m/s]. */
  readonly airspeedOfLeg: (leg: number) => number;
  /** Lowest and highest permitted air temperature [K], and the air's by height above mean sea level. */
  readonly temperature: { readonly minimum: number; readonly maximum: number; readonly at: (height: number) => number };
}

/** Largest used share of every limit over a flight. */
export function flightLimits(flight: FlownFlight, bounds: LimitBounds): readonly FlightLimit[] {
  const found: FlightLimit[] = [];
  const { rows } = flight;
  bounds.trimLimits.forEach((limit, index) => {
    const most = largest(rows, (row) => row.step?.shares?.[index]);
    if (most)
      found.push({ ...limit, share: most.share, side: limit.name === "stall margin" ? "lower" : "upper", where: whereOf(most.row) });
  });
  const add = (limit: NamedLimit, side: FlightLimit["side"], share: (row: FlightRow) => number | undefined) => {
    const most = largest(rows, share);
    if (most) found.push({ ...limit, share: most.share, side, where: whereOf(most.row) });
  };
  add({ name: "cut-off voltage", family: "power" }, "lower", ({ step }) => (step ? bounds.cutoffVoltage / step.voltage : undefined));
  add({ name: "wind against airspeed", family: "air" }, "upper", ({ leg, state }) =>
    leg === undefined ? undefined : windNeeds(state) / bounds.airspeedOfLeg(leg),
  );
  add({ name: "altitude", family: "rule" }, "upper", ({ state }) => Math.max(0, state.height) / bounds.altitudeMaximum);
  const { minimum, maximum, at } = bounds.temperature;
  const middle = (minimum + maximum) / 2;
  const reach = (maximum - minimum) / 2;
  add(
    { name: "air temperature", family: "rule" },
    at(rows[0]?.state.height ?? 0) > middle ? "upper" : "lower",
    ({ state }) => Math.abs(at(state.height) - middle) / reach,
  );
  return found;
}

function largest(rows: readonly FlightRow[], share: (row: FlightRow) => number | undefined) {
  let most: { readonly share: number; readonly row: FlightRow } | undefined;
  for (const row of rows) {
    const used = share(row);
    if (used !== undefined && (most === undefined || used > most.share)) most = { share: used, row };
  }
  return most;
}

/** Airspeed that the wind alone asks for to stay on the track [m/s]: all of a head wind, the cross part of a tail wind. */
function windNeeds({ headwind, windSpeed }: FlightState): number {
  return headwind > 0 ? windSpeed : Math.sqrt(Math.max(0, windSpeed * windSpeed - headwind * headwind));
}

/** A moment of the flight in words. */
export function whereOf(row: FlightRow): string {
  const minutes = row.state.time / 60;
  const { phase } = row;
  return `${row.name}${phase === "hover" || phase === "on-ground" ? "" : `, ${phase}`}, at ${minutes.toFixed(1)} min`;
}
