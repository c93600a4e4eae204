import type { AircraftDefinition, ControlPart, Loading } from "../../aircraft/index.ts";
import { massProperties } from "../../aircraft/index.ts";
import type { AirState } from "../../environment/atmosphere/index.ts";
import { type FullPoint, type FullTrimmed, FullTrimmer } from "../../equilibrium/index.ts";
import { border } from "../../numerics/index.ts";
import type { CentreLimit } from "./centre-limits.ts";

/** Flights whose stability sets the rearmost centre of gravity [m/s]: fast enough that surfaces say something. */
export const margined = [16, 24, 32] as const;

/** Flights that must be trimmed with some control left. */
const controlled = [
  { mode: "clutch-closed", airspeed: 0 },
  { mode: "clutch-closed", airspeed: 16 },
  { mode: "clutch-open", airspeed: 24 },
] as const;

/** Way that every angular control keeps at either end, over half its range (common practice) [1]. */
const controlKept = 0.1;
/** Farthest that the centre of gravity is moved in search of a limit, and how exactly it is found [m]. */
const farthest = 0.3;
const step = 0.05;
const tolerance = 5e-4;

interface StabilityFlight {
  readonly airspeed: number;
  readonly mode: "clutch-closed" | "clutch-open" | null;
  readonly rearmostCentre: number | null;
}

/** The rearmost centre of gravity with which every one of these flights is brought back by itself. */
export function stabilityLimit(flights: readonly StabilityFlight[]): readonly CentreLimit[] {
  let tightest: (StabilityFlight & { readonly rearmostCentre: number }) | undefined;
  for (const flight of flights) {
    const { rearmostCentre } = flight;
    if (rearmostCentre !== null && rearmostCentre > (tightest?.rearmostCentre ?? Number.NEGATIVE_INFINITY))
      tightest = { ...flight, rearmostCentre };
  }
  if (tightest === undefined) return [];
  const mode = tightest.mode === "clutch-open" ? ", clutch open" : tightest.mode === "clutch-closed" ? ", clutch closed" : "";
  return [{ side: "aft", x: tightest.rearmostCentre, from: `stability at ${tightest.airspeed} m/s${mode}` }];
}

/**
 * Foremost and rearmost centres of gravity with which hover and cruise can be trimmed with a tenth of every angular control left. The empty aircraft's
 * centre is moved until a flight is lost; a limit beyond the search, or a flight that is not flown at all, gives none.
 */
export function controlLimits(aircraft: AircraftDefinition, loading: Loading, air: AirState, each: () => void): readonly CentreLimit[] {
  const kept: AircraftDefinition = { ...aircraft, controls: aircraft.controls.map(withKeptWay) };
  const base = massProperties(aircraft, loading);
  const share = base.mass / aircraft.emptyMass;
  const trimmer = new FullTrimmer({ aircraft: kept, loading, air, controls: "optimum", losses: "component", lightsOn: false });
  const moved = (by: number) =>
    trimmer.with({ aircraft: { ...kept, emptyCentre: { ...kept.emptyCentre, x: kept.emptyCentre.x + by * share } } });
  return controlled.flatMap(({ mode, airspeed }) => {
    const point: FullPoint = { mode, airspeed, climbRate: 0, sideslip: 0 };
    const first = trimmer.trim(point, "table");
    if (first.kind !== "trimmed") return [];
    const where = `${airspeed === 0 ? "hover" : `${airspeed} m/s`}, ${mode === "clutch-closed" ? "clutch closed" : "clutch open"}`;
    return ([1, -1] as const).flatMap((sign): CentreLimit[] => {
      let near: FullTrimmed = first;
      let lost = "";
      const flies = (by: number): boolean => {
        each();
        const outcome = moved(sign * by).trimFrom(point, [near.start], "table");
        if (outcome.kind === "trimmed") near = outcome;
        else lost = outcome.limit;
        return outcome.kind === "trimmed";
      };
      let inside = 0;
      while (inside < farthest && flies(inside + step)) inside += step;
      if (inside >= farthest) return [];
      const by = border(flies, inside, inside + step, tolerance);
      return [{ side: sign === 1 ? "fore" : "aft", x: base.centre.x + sign * by, from: `${lost} in ${where}` }];
    });
  });
}

/** A control of which only nine tenths of its way may be used. */
function withKeptWay(control: ControlPart): ControlPart {
  if (control.what === "thrust" || control.what === "tip-speed") return control;
  const narrowed = <Setting extends ControlPart["setting"]>(setting: Setting): Setting => {
    if (setting.kind !== "free" && setting.kind !== "scheduled") return setting;
    const cut = (controlKept * (setting.maximum - setting.minimum)) / 2;
    return { ...setting, minimum: setting.minimum + cut, maximum: setting.maximum - cut };
  };
  return {
    ...control,
    setting: narrowed(control.setting),
    ...(control.clutchOpen ? { clutchOpen: narrowed(control.clutchOpen) } : {}),
  } as ControlPart;
}
