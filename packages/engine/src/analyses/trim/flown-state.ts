import { type AircraftDefinition, networkPower, standardGravity } from "../../aircraft/index.ts";
import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import { type FullConditions, type FullTrimmed, referenceSize, runningLines } from "../../equilibrium/index.ts";
import { domainDistance } from "../../published/index.ts";
import type { FlownStateOutputs } from "./schema.ts";

const axes = (values: readonly [number, number, number]) => ({ x: values[0], y: values[1], z: values[2] });
const fixedRange = 1e-12;

/** A trimmed flight as outputs. */
export function flownStateOf(conditions: FullConditions, airframe: Airframe, trimmed: FullTrimmed): FlownStateOutputs {
  const { evaluation, point } = trimmed;
  const { loads, flight, rotorStates, balance } = evaluation;
  const running = runningLines(airframe, point);
  const weight = airframe.mass * standardGravity;
  const up = upward(evaluation.pitch, evaluation.roll);
  const { aircraft, air } = conditions;
  const forces = [balance[0], balance[1], balance[2]].map((value) => Math.abs(value as number));
  const moments = [balance[3], balance[4], balance[5]].map((value) => Math.abs(value as number));
  const limits = [...trimmed.limits].sort((a, b) => b.share - a.share);
  const scale = weight * referenceSize(conditions);
  const free = airframe.rotors
    .map((_, i) => Math.abs(loads.rotors[i]?.torque ?? 0) / scale)
    .filter((_, i) => !airframe.isDriven(i, running));
  return {
    pitch: evaluation.pitch,
    roll: evaluation.roll,
    sideslip: evaluation.sideslip,
    airspeed: evaluation.airspeed,
    climbRate: evaluation.climbRate,
    loadFactor: Math.hypot(...flight.apparentGravity) / standardGravity,
    electricPower: loads.electricPower,
    controls: airframe.controls.map((control, i) => controlOutputs(conditions, airframe, trimmed, control, i)),
    rotors: loads.rotors.map((rotor, i) => {
      const { part, solidity } = airframe.rotors[i] as Airframe["rotors"][number];
      const at = i * rotorStateWidth;
      const tipSpeed = rotorStates[at] as number;
      const chord = chordAtThreeQuarters(part.stations);
      const margin = trimmed.stallMargins[i];
      const hover = Math.sqrt(Math.abs(rotor.ct) / 2);
      return {
        id: part.id,
        driven: airframe.isDriven(i, running),
        tipSpeed,
        rotationRate: tipSpeed / part.radius,
        thrust: rotor.thrust,
        hForce: rotor.hForce,
        sideForce: rotor.sideForce,
        torque: rotor.torque,
        shaftPower: airframe.isDriven(i, running) ? (rotor.torque * tipSpeed) / part.radius : 0,
        inducedVelocity: rotor.inducedVelocity,
        advanceRatio: rotor.advanceRatio,
        bladeLoading: rotor.ct / solidity,
        stallMargin: margin !== undefined && Number.isFinite(margin) ? margin : null,
        flapBack: rotorStates[at + 2] as number,
        flapRight: rotorStates[at + 3] as number,
        coning: rotorStates[at + 4] as number,
        domain: domainDistance("rotor", {
          advanceRatio: rotor.advanceRatio,
          reynoldsNumber: (0.75 * tipSpeed * chord * air.density) / air.dynamicViscosity,
          bladeLoading: rotor.ct / solidity,
          tipMach: tipSpeed / air.speedOfSound,
          axialRatio: hover > 0 ? rotor.axialInflow / hover : undefined,
        }),
      };
    }),
    propellers: loads.propellers.map(({ thrust, rotationRate, shaftPower, torque }, i) => ({
      id: aircraft.propellers[i]?.id ?? "",
      thrust,
      rotationRate,
      shaftPower,
      torque,
    })),
    surfaces: loads.surfaces.map(({ id, lift, angle }) => ({ id, liftCoefficient: lift, angleOfAttack: angle })),
    parts: loads.parts.map(({ id, kind, force, moment }) => {
      const lift = force[0] * up[0] + force[1] * up[1] + force[2] * up[2];
      return { id, kind, lift, liftShare: lift / weight, force: axes(force), moment: axes(moment) };
    }),
    power: powerOutputs(conditions, aircraft, trimmed),
    axes: axesOf(evaluation.axes),
    limits: limits.map(({ limit, share }) => ({ name: limit.name, family: limit.family, share })),
    bindingLimit: limits[0] && limits[0].share > 0.9995 ? limits[0].limit.name : null,
    forceResidual: Math.max(...forces),
    momentResidual: Math.max(...moments, ...free),
  };
}

function axesOf([pitch, roll, yaw, lift, forward]: readonly number[]): FlownStateOutputs["axes"] {
  if (pitch === undefined || roll === undefined || yaw === undefined || lift === undefined || forward === undefined) return null;
  return { pitch, roll, yaw, lift, forward };
}

/** The upward direction in body axes. */
function upward(pitch: number, roll: number): readonly [number, number, number] {
  return [Math.sin(pitch), -Math.cos(pitch) * Math.sin(roll), -Math.cos(pitch) * Math.cos(roll)];
}

function controlOutputs(
  conditions: FullConditions,
  airframe: Airframe,
  { evaluation, point }: FullTrimmed,
  control: Airframe["controls"][number],
  index: number,
): FlownStateOutputs["controls"][number] {
  const { definition } = control;
  const rotor = airframe.rotors.findIndex((_, i) => airframe.tipSpeedControl(i) === index);
  const value = rotor >= 0 ? (evaluation.rotorStates[rotor * rotorStateWidth] as number) : (evaluation.controls[index] as number);
  const setting = (point.mode === "clutch-closed" ? undefined : definition.clutchOpen) ?? definition.setting;
  const stuck = point.stuck?.[control.id] !== undefined;
  const movable = setting.kind === "free" || setting.kind === "scheduled";
  const half = movable ? (setting.maximum - setting.minimum) / 2 : 0;
  const free = setting.kind === "free" || (setting.kind === "scheduled" && conditions.controls === "optimum");
  return {
    id: control.id,
    part: control.part,
    angle: control.what === "thrust" || control.what === "tip-speed" ? null : value,
    speed: control.what === "tip-speed" ? value : null,
    force: control.what === "thrust" ? value : null,
    margin: movable && half > fixedRange ? Math.min(value - setting.minimum, setting.maximum - value) / half : null,
    state: stuck ? "stuck" : free ? "free" : setting.kind === "scheduled" ? "scheduled" : "held",
  };
}

function powerOutputs(conditions: FullConditions, aircraft: AircraftDefinition, { evaluation }: FullTrimmed): FlownStateOutputs["power"] {
  const drives = evaluation.loads.drives.map(({ id, shaftPower, electricPower }) => ({
    id,
    shaftPower,
    losses: electricPower - shaftPower,
    electricPower,
  }));
  const network = networkPower(aircraft.electrical, {
    lightsOn: conditions.lightsOn,
    manoeuvring: false,
    payloadPower: conditions.loading.payloadPower,
  });
  const consumers = network.consumers.map(({ id, atTerminals }) => ({ id, shaftPower: null, losses: null, electricPower: atTerminals }));
  return [...drives, ...consumers.filter(({ electricPower }) => electricPower !== 0)];
}

function chordAtThreeQuarters(stations: readonly { readonly radiusFraction: number; readonly chord: number }[]): number {
  let below = stations[0];
  for (const station of stations) {
    if (station.radiusFraction >= 0.75) {
      const span = below ? station.radiusFraction - below.radiusFraction : 0;
      return below && span > 0 ? below.chord + ((station.chord - below.chord) * (0.75 - below.radiusFraction)) / span : station.chord;
    }
    below = station;
  }
  return below?.chord ?? 0;
}
