import type { AircraftDefinition, Loading } from "../../aircraft/index.ts";
import { takeoffMass } from "../../aircraft/index.ts";
import { moistAir, standardPressure, standardTemperature } from "../../environment/atmosphere/index.ts";
import { type FullConditions, FullTrimmer } from "../../equilibrium/index.ts";
import { type EnvelopeRules, EnvelopeTrimmer, type PoweredMode, poweredModes } from "../../performance/index.ts";
import type { Problem, ProjectView } from "../contract.ts";
import { type Assumed, chosenDefinition, chosenLoading, isProblem, massProblem } from "../inputs/flight-conditions.ts";
import type { EnvelopeInputs, EnvelopeOutputs } from "./schema.ts";

/** What trims of one kind have in common. */
export interface TrimPlace {
  readonly blocks: number;
  readonly altitude: number;
  readonly day: number;
  readonly groundHeight?: number | undefined;
}

/** Everything that an envelope is computed with. */
export interface EnvelopeSetting {
  readonly aircraft: AircraftDefinition;
  readonly inputs: EnvelopeInputs;
  readonly rules: EnvelopeRules;
  readonly packs: EnvelopeOutputs["packs"];
  /** Packs that may take off, ascending. */
  readonly flown: readonly number[];
  readonly now: EnvelopeOutputs["now"];
  /** Ascending. */
  readonly altitudes: readonly number[];
  readonly speeds: readonly number[];
  readonly days: readonly number[];
  readonly ceilingDays: readonly number[];
  readonly groundHeight: number | undefined;
  /** Without a one-way clutch under a rotor both rotor modes are the same: the first alone is looked at. */
  readonly modes: readonly PoweredMode[];
  readonly assumed: Assumed;
  conditions(blocks: number, altitude: number, day: number): FullConditions;
  /** @param checked called before every trim; may throw to end the work */
  trimmer(place: TrimPlace, checked: () => void): EnvelopeTrimmer;
}

const usualAltitudes = 6;
/** Below half a radius nothing is known of a rotor near the ground. */
const lowestOverRadius = 0.5;

const ascending = (values: readonly number[]) => [...new Set(values)].sort((a, b) => a - b);

/** Aircraft, packs, altitudes and days of the question, or why there is no answer. */
export function envelopeSetting(project: ProjectView, inputs: EnvelopeInputs): EnvelopeSetting | Problem {
  const chosen = chosenDefinition(project, inputs.aircraft);
  if (isProblem(chosen)) return chosen;
  const aircraft = withStallMargin(chosen.definition, inputs.stallMargin);
  const asked = ascending([...(inputs.packs ?? aircraft.battery.packs), ...(inputs.loading.blocks ? [inputs.loading.blocks] : [])]);
  const loadings = new Map<number, Loading>();
  let assumed: Assumed = chosen.assumed;
  for (const blocks of asked) {
    const loaded = chosenLoading(aircraft, { ...inputs.loading, blocks });
    if (isProblem(loaded)) return loaded;
    loadings.set(blocks, loaded.loading);
    if (blocks === asked[0]) assumed = [...assumed, ...loaded.assumed];
  }
  const mass = (blocks: number) => takeoffMass(aircraft, loadings.get(blocks) as Loading);
  const packs = asked.map((blocks) => ({
    blocks,
    takeoffMass: mass(blocks),
    isTooHeavy: massProblem(aircraft, mass(blocks)) !== undefined,
  }));
  const flown = packs.flatMap(({ blocks, isTooHeavy }) => (isTooHeavy ? [] : [blocks]));
  const lightest = massProblem(aircraft, mass(asked[0] as number));
  if (flown.length === 0 && lightest) return lightest;
  const blocks = inputs.loading.blocks ?? (flown[flown.length - 1] as number);
  if (!flown.includes(blocks)) return massProblem(aircraft, mass(blocks)) as Problem;
  const ground = groundHeightOf(aircraft, inputs);
  if (typeof ground === "object") return ground;
  const conditions = (pack: number, altitude: number, day: number): FullConditions => ({
    aircraft,
    loading: loadings.get(pack) as Loading,
    air: moistAir({
      pressure: standardPressure(altitude),
      temperature: standardTemperature(altitude) + day,
      relativeHumidity: inputs.relativeHumidity,
    }),
    controls: inputs.controls,
    losses: inputs.losses,
    lightsOn: inputs.lightsOn,
  });
  return {
    aircraft,
    inputs,
    packs,
    flown,
    now: { blocks, temperatureOffset: inputs.temperatureOffset },
    altitudes: ascending(inputs.altitudes ?? usualAltitudesOf(aircraft)),
    speeds: ascending(inputs.speeds),
    days: ascending([inputs.temperatureOffset, ...inputs.temperatureOffsets]),
    ceilingDays: ascending([inputs.temperatureOffset, ...inputs.temperatureOffsets, ...inputs.ceilingTemperatureOffsets]),
    groundHeight: ground,
    modes: hasFreeRotor(aircraft) ? poweredModes : poweredModes.slice(0, 1),
    rules: rulesOf(aircraft, inputs),
    assumed: [...assumed, ...assumptions(aircraft, inputs, blocks, ground)],
    conditions,
    trimmer: trimmers(conditions, rulesOf(aircraft, inputs)),
  };
}

/** What is known of the rotors in one air serves every pack in it: it depends on nothing else, so who asks first changes no bit. */
function trimmers(conditions: EnvelopeSetting["conditions"], rules: EnvelopeRules): EnvelopeSetting["trimmer"] {
  const known = new Map<string, FullTrimmer>();
  return ({ blocks, altitude, day, groundHeight }, checked) => {
    const key = `${altitude} ${day} ${groundHeight ?? ""}`;
    const here = conditions(blocks, altitude, day);
    const near = known.get(key);
    const trimmer =
      near?.with({ loading: here.loading }) ?? new FullTrimmer({ ...here, ...(groundHeight === undefined ? {} : { groundHeight }) });
    if (!near) known.set(key, trimmer);
    return new EnvelopeTrimmer(trimmer, rules, checked);
  };
}

function hasFreeRotor({ rotors, driveLines }: AircraftDefinition): boolean {
  return driveLines.some(({ clutch, drives }) => clutch === "one-way" && rotors.some(({ id }) => id === drives));
}

function withStallMargin(aircraft: AircraftDefinition, floor: number | undefined): AircraftDefinition {
  if (floor === undefined) return aircraft;
  return { ...aircraft, rotors: aircraft.rotors.map((rotor) => ({ ...rotor, stallMarginFloor: floor })) };
}

function rulesOf(aircraft: AircraftDefinition, inputs: EnvelopeInputs): EnvelopeRules {
  const { tipMachMaximum, stateOfCharge, cellResistanceFactor, loading } = inputs;
  const record = loading.payloadMass === undefined ? aircraft.payloads.find(({ name }) => name === loading.payload) : undefined;
  return {
    tipMachMaximum,
    stateOfCharge,
    cellResistanceFactor,
    ...(record?.temperatureMinimum === undefined ? {} : { payloadTemperatureMinimum: record.temperatureMinimum }),
    ...(record?.temperatureMaximum === undefined ? {} : { payloadTemperatureMaximum: record.temperatureMaximum }),
  };
}

function usualAltitudesOf({ limits }: AircraftDefinition): number[] {
  const top = Math.min(11_000, limits.altitudeMaximum);
  if (!(top > 0)) return [Math.max(-2000, top)];
  return Array.from({ length: usualAltitudes }, (_, i) => (top * i) / (usualAltitudes - 1));
}

function groundHeightOf({ rotors }: AircraftDefinition, { groundHeight }: EnvelopeInputs): number | undefined | Problem {
  const [first] = rotors;
  if (!first) return undefined;
  const least = lowestOverRadius * Math.max(...rotors.map(({ radius }) => radius));
  const height = groundHeight ?? Math.max(first.radius, least);
  if (height >= least) return height;
  return {
    kind: "too-near-the-ground",
    message: `groundHeight is ${height} m; nothing is known of a rotor nearer to the ground than half its radius, ${least} m.`,
  };
}

function assumptions(aircraft: AircraftDefinition, inputs: EnvelopeInputs, blocks: number, ground: number | undefined): Assumed {
  const found: { path: string; value: unknown; because: string }[] = [];
  if (inputs.packs === undefined) found.push({ path: "/packs", value: aircraft.battery.packs, because: "the aircraft's packs" });
  if (inputs.loading.blocks === undefined)
    found.push({ path: "/loading/blocks", value: blocks, because: "the largest of the packs looked at" });
  if (inputs.altitudes === undefined)
    found.push({ path: "/altitudes", value: usualAltitudesOf(aircraft), because: "from sea level to the aircraft's altitude limit" });
  if (inputs.groundHeight === undefined && ground !== undefined)
    found.push({ path: "/groundHeight", value: ground, because: "one rotor radius" });
  return found;
}
