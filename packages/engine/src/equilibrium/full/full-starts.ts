import { solveRotorInflowAndFlap } from "../../aerodynamics/rotor/index.ts";
import { standardGravity } from "../../aircraft/index.ts";
import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import type { FullConditions, FullPoint } from "./full-conditions.ts";
import type { FullProblem } from "./full-problem.ts";
import { attitudeIndex } from "./full-variables.ts";

const degree = Math.PI / 180;

/** Ways of flying that a trim starts from. Tip speed over the permitted range, from 0 to 1. */
const archetypes = [
  { pitch: 0, tipSpeed: 0.65, collective: 8.5, forward: 0.03 },
  { pitch: 2, tipSpeed: 0.3, collective: 5, forward: 0.13 },
  { pitch: 3, tipSpeed: 0.05, collective: 1, forward: 0.16 },
  { pitch: -4, tipSpeed: 0.7, collective: 7, forward: 0.02 },
] as const;

const glideAngles = [-10, -15, -25, -40] as const;
/** Above the horizontal by more than this a propeller lifts rather than pulls. */
const liftingAxis = Math.PI / 4;

/** Vectors of unknowns for a flight of which nothing is known. @derivation rough balance of weight and drag */
export function fullStarts(
  conditions: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  problem: FullProblem,
): readonly Float64Array[] {
  return archetypes.map((archetype, i) => {
    const { layout } = problem;
    const x = new Float64Array(layout.size);
    const put = (index: number, value: number) => {
      const scaled = value / (layout.units[index] as number);
      x[index] = Math.min(layout.upper[index] as number, Math.max(layout.lower[index] as number, scaled));
    };
    const glide = point.mode === "glide";
    const path = glide ? (glideAngles[i] as number) * degree : 0;
    const pitch = archetype.pitch * degree;
    put(attitudeIndex.pitch, pitch);
    put(attitudeIndex.roll, 0);
    put(attitudeIndex.sideslip, point.sideslip ?? 0);
    put(attitudeIndex.path, path);
    const weight = airframe.mass * standardGravity;
    const lifting = airframe.propellers.filter(({ axis }) => Math.abs(axis.up) > liftingAxis).length;
    const pulling = airframe.propellers.length - lifting;
    const carried = airframe.rotors.length > 0 ? 0 : 1;
    airframe.controls.forEach((control, k) => {
      const index = layout.controlAt + k;
      const low = (layout.lower[index] as number) * (layout.units[index] as number);
      const high = (layout.upper[index] as number) * (layout.units[index] as number);
      const propeller = airframe.propellers.find(({ id }) => id === control.part);
      if (control.what === "collective") put(index, archetype.collective * degree);
      else if (control.what === "thrust" && propeller) {
        const lifts = Math.abs(propeller.axis.up) > liftingAxis;
        put(index, lifts ? (carried * weight) / Math.max(lifting, 1) : (archetype.forward * weight) / Math.max(pulling, 1));
      } else put(index, low > 0 || high < 0 ? (low + high) / 2 : 0);
    });
    airframe.rotors.forEach((rotor, k) => {
      const at = layout.rotorAt + k * rotorStateWidth;
      const unit = layout.units[at] as number;
      const low = (layout.lower[at] as number) * unit;
      const high = (layout.upper[at] as number) * unit;
      const tipSpeed = low + archetype.tipSpeed * (high - low);
      put(at, tipSpeed);
      const collective = airframe.collectiveControl(k);
      const settled = settledRotor(conditions, point, airframe, k, {
        tipSpeed,
        collective:
          collective < 0 ? 0 : (x[layout.controlAt + collective] as number) * (layout.units[layout.controlAt + collective] as number),
        discAngle: pitch + rotor.part.shaftTilt.back - path,
      });
      put(at + 1, settled?.inflow ?? Math.sqrt(weight / (2 * conditions.air.density * rotor.area)) / tipSpeed / 2);
      put(at + 2, 0);
      put(at + 3, 0);
      put(at + 4, rotor.cones ? (settled?.coning ?? 0.05) : rotor.part.precone);
      if (settled) steer(airframe, k, settled, put, layout.controlAt, at);
    });
    return x;
  });
}

interface Settled {
  readonly inflow: number;
  readonly theta1c: number;
  readonly theta1s: number;
  readonly coning: number;
}

/** Inflow and pitch harmonics of one rotor alone, in a wind from ahead. */
function settledRotor(
  { air }: FullConditions,
  point: FullPoint,
  airframe: Airframe,
  index: number,
  rotor: { readonly tipSpeed: number; readonly collective: number; readonly discAngle: number },
): Settled | undefined {
  const solved = solveRotorInflowAndFlap((airframe.rotors[index] as Airframe["rotors"][number]).workspace, {
    airspeed: Math.hypot(point.airspeed, point.climbRate),
    angle: {
      kind: "disc",
      value: rotor.discAngle - Math.atan2(point.climbRate, Math.max(point.airspeed, 1e-9)) * (point.airspeed > 1 ? 1 : 0),
    },
    tipSpeed: rotor.tipSpeed,
    collective: rotor.collective,
    air,
  });
  if (solved.kind !== "solved") return undefined;
  return { inflow: solved.lambdaI, theta1c: solved.theta1c, theta1s: solved.theta1s, coning: solved.coning };
}

/** The cyclic that keeps the disc where the shaft is, as far as there is one; the rest is flapping. */
function steer(
  airframe: Airframe,
  rotor: number,
  { theta1c, theta1s }: Settled,
  put: (index: number, value: number) => void,
  controlAt: number,
  stateAt: number,
): void {
  const part = (airframe.rotors[rotor] as Airframe["rotors"][number]).part;
  const sense = part.turns === "counter-clockwise" ? 1 : -1;
  const find = (what: string) => airframe.controls.findIndex((control) => control.part === part.id && control.what === what);
  const longitudinal = find("longitudinal-cyclic");
  const lateral = find("lateral-cyclic");
  if (longitudinal >= 0) put(controlAt + longitudinal, theta1s);
  else put(stateAt + 2, -theta1s);
  if (lateral >= 0) put(controlAt + lateral, -sense * theta1c);
  else put(stateAt + 3, sense * theta1c);
}
