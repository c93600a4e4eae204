import { type AircraftDefinition, type Loading, largestPayload, takeoffMass } from "../../aircraft/index.ts";
import { type BatteryPack, batteryPack } from "../../drivetrain/battery/index.ts";
import type { AirState } from "../../environment/atmosphere/index.ts";
import { createTrimRotor, type FullTrimmed, FullTrimmer, type Trimmed } from "../../equilibrium/index.ts";
import {
  type Flown,
  fullFlyer,
  type LineHooks,
  type LoadingPerformance,
  loadingPerformance,
  reducedFlyer,
} from "../../performance/index.ts";
import { type Analysis, Cancelled, type Context, type Outcome, type ProjectView } from "../contract.ts";
import { aircraftNeeds, chosenAircraft, chosenDefinition, givenAir, isProblem } from "../inputs/flight-conditions.ts";
import { fullTrimWarnings } from "../inputs/full-flight.ts";
import { trimMethod, trimWarnings } from "../inputs/trim-method.ts";
import { payloadAnswer, payloadFigures, payloadLimits } from "./faces.ts";
import { type PayloadInputs, type PayloadOutputs, type PayloadRow, payloadInputs, payloadOutputs } from "./schema.ts";

interface Cell {
  readonly blocks: number;
  readonly payload: number;
}

/** What the question needs of an aircraft at either trim level. */
type Carrier = Pick<AircraftDefinition, "emptyMass" | "battery" | "limits" | "payloads">;

/** What one loading can do, by a trim level, with the stall margin in hover [1]. */
type Ask = (
  loading: Loading,
  pack: BatteryPack,
  hooks: Pick<LineHooks, "cancelled">,
) => { readonly found: LoadingPerformance<Flown>; readonly hoverStallMargin: number | null };

function run(project: ProjectView, inputs: PayloadInputs, context: Context<PayloadOutputs>): Outcome<PayloadOutputs> {
  const full = inputs.trimLevel === "full";
  const chosen = chosenDefinition(project, inputs.aircraft);
  if (isProblem(chosen)) return { problem: chosen };
  const reduced = full ? undefined : chosenAircraft(project, inputs.aircraft);
  if (reduced && isProblem(reduced)) return { problem: reduced };
  const aircraft = chosen.definition;
  const air = givenAir(inputs);
  if (isProblem(air)) return { problem: air };
  const packs = [...new Set(inputs.packs ?? aircraft.battery.packs)].sort((a, b) => a - b);
  const tooMany = packs.find((blocks) => blocks > aircraft.battery.bay.places);
  if (tooMany !== undefined) {
    return {
      problem: {
        kind: "loading-impossible",
        message: `The battery bay holds ${aircraft.battery.bay.places} blocks; a pack of ${tooMany} was asked for.`,
      },
    };
  }
  const cells = packs.flatMap((blocks) => cellsOf(aircraft, inputs, blocks));
  const ask = reduced ? reducedAsk(reduced.aircraft, air, inputs) : fullAsk(aircraft, air, inputs);
  const rows: PayloadRow[] = [];
  cells.forEach((cell, i) => {
    rows.push(rowOf(aircraft, cell, inputs, ask, context));
    context.progress(i + 1, cells.length, "loadings");
  });
  const assumed = inputs.packs === undefined ? [{ path: "/packs", value: packs, because: "the aircraft's packs" }] : [];
  return {
    outputs: { rows, now: nowOf(aircraft, rows), exchange: exchangeOf(aircraft, rows) },
    assumed: [...chosen.assumed, ...assumed],
    warnings: full ? fullTrimWarnings : trimWarnings,
  };
}

function reducedAsk(
  aircraft: Parameters<typeof createTrimRotor>[0],
  air: AirState,
  { controls, losses, lightsOn, reserve }: PayloadInputs,
): Ask {
  const rotor = createTrimRotor(aircraft, air);
  return (loading, pack, hooks) => {
    const flyer = reducedFlyer({ aircraft, loading, air, controls, losses, lightsOn }, rotor);
    const found = loadingPerformance<Trimmed>(flyer, pack, reserve, hooks);
    return { found, hoverStallMargin: found.hover.kind === "flies" ? found.hover.trimmed.stallMargin : null };
  };
}

function fullAsk(aircraft: AircraftDefinition, air: AirState, { controls, losses, lightsOn, reserve }: PayloadInputs): Ask {
  return (loading, pack, hooks) => {
    const flyer = fullFlyer(new FullTrimmer({ aircraft, loading, air, controls, losses, lightsOn }));
    const found = loadingPerformance<FullTrimmed>(flyer, pack, reserve, hooks);
    const margin = found.hover.kind === "flies" ? found.hover.trimmed.stallMargins[0] : undefined;
    return { found, hoverStallMargin: margin !== undefined && Number.isFinite(margin) ? margin : null };
  };
}

function cellsOf(aircraft: Carrier, inputs: PayloadInputs, blocks: number): Cell[] {
  const most = largestPayload(aircraft, blocks);
  const masses = [...inputs.payloads, ...(inputs.largestPayload && most >= 0 ? [most] : [])];
  return [...new Set(masses)].sort((a, b) => a - b).map((payload) => ({ blocks, payload }));
}

function rowOf(aircraft: Carrier, cell: Cell, inputs: PayloadInputs, ask: Ask, context: Context<PayloadOutputs>): PayloadRow {
  const loading: Loading = {
    blocks: cell.blocks,
    payloadMass: cell.payload,
    payloadPower: inputs.payloadPower,
    payloadDragArea: inputs.payloadDragArea,
  };
  const mass = takeoffMass(aircraft, loading);
  const place = { blocks: loading.blocks, payload: loading.payloadMass, takeoffMass: mass };
  if (mass > aircraft.limits.largestTakeoffMass + 1e-9) return { ...place, ...nothing, limit: "largest take-off mass" };
  const pack = batteryPack(
    aircraft.battery.cell,
    { ...aircraft.battery, blocks: loading.blocks },
    { temperature: inputs.cellTemperature, capacityFactor: inputs.cellCapacityFactor, resistanceFactor: inputs.cellResistanceFactor },
  );
  const { found, hoverStallMargin } = ask(loading, pack, {
    cancelled: () => {
      if (context.cancelled()) throw new Cancelled();
    },
  });
  return { ...place, ...performanceColumns(found, hoverStallMargin), limit: limitOf(found) };
}

const nothing = {
  hoverEndurance: null,
  cruiseEndurance: null,
  range: null,
  hoverPower: null,
  minimumPower: null,
  minimumPowerSpeed: null,
  minimumPowerMode: null,
  bestRangePower: null,
  bestRangeSpeed: null,
  bestRangeMode: null,
  hoverStallMargin: null,
} as const;

function performanceColumns(
  found: LoadingPerformance<Flown>,
  hoverStallMargin: number | null,
): Omit<PayloadRow, "blocks" | "payload" | "takeoffMass" | "limit"> {
  const hover = found.hover.kind === "flies" ? found.hover.trimmed : undefined;
  return {
    hoverEndurance: found.hoverEndurance?.duration ?? null,
    cruiseEndurance: found.cruiseEndurance?.duration ?? null,
    range: found.range ?? null,
    hoverPower: hover?.flown.electricPower ?? null,
    minimumPower: found.cruise?.electricPower ?? null,
    minimumPowerSpeed: found.cruise?.airspeed ?? null,
    minimumPowerMode: found.cruise?.mode ?? null,
    bestRangePower: found.travel?.electricPower ?? null,
    bestRangeSpeed: found.travel?.airspeed ?? null,
    bestRangeMode: found.travel?.mode ?? null,
    hoverStallMargin,
  };
}

/** What forbids hover, else what ends it. */
function limitOf(found: LoadingPerformance<Flown>): string {
  if (found.hover.kind === "no-equilibrium") return `no hover: ${found.hover.limit}`;
  return found.hoverEndurance?.ends === "not-deliverable" ? "cut-off voltage" : "reserve";
}

/** The sentence speaks of the largest pack with the payload nearest to the standard record. */
function nowOf(aircraft: Carrier, rows: readonly PayloadRow[]): PayloadOutputs["now"] {
  const standard = aircraft.payloads[0]?.mass ?? 0;
  const largest = Math.max(...rows.map((row) => row.blocks));
  const candidates = rows.filter((row) => row.blocks === largest);
  const nearest = [...candidates].sort((a, b) => Math.abs(a.payload - standard) - Math.abs(b.payload - standard))[0];
  return nearest ? { blocks: nearest.blocks, payload: nearest.payload } : null;
}

function exchangeOf(aircraft: Carrier, rows: readonly PayloadRow[]): PayloadOutputs["exchange"] {
  const packs = [...new Set(rows.map((row) => row.blocks))].sort((a, b) => b - a);
  const [more, fewer] = packs;
  if (more === undefined || fewer === undefined) return null;
  const flying = (blocks: number) =>
    rows.filter((row) => row.blocks === blocks && row.hoverEndurance !== null).sort((a, b) => a.payload - b.payload);
  const large = flying(more);
  for (const row of large) {
    const same = flying(fewer).find((other) => Math.abs(other.payload - row.payload) < 1e-9);
    const heavier = large.find((other) => other.payload > row.payload + 1e-9);
    if (same === undefined || heavier === undefined) continue;
    const slope = ((heavier.hoverEndurance as number) - (row.hoverEndurance as number)) / (heavier.payload - row.payload);
    return {
      blockMass: aircraft.battery.blockMass,
      hoverPerBlock: ((row.hoverEndurance as number) - (same.hoverEndurance as number)) / (more - fewer),
      hoverPerBlockAsPayload: -slope * aircraft.battery.blockMass,
    };
  }
  return null;
}

/** Endurance and range over packs and payloads. */
export const payload: Analysis<PayloadInputs, PayloadOutputs> = {
  name: "payload",
  question: "What can it carry, and for how long?",
  inputs: payloadInputs,
  outputs: payloadOutputs,
  method: {
    ...trimMethod,
    summary: `${trimMethod.summary} The pack is discharged second by second at constant power through its resistance; no climb or transition is counted.`,
  },
  example: {},
  needs: aircraftNeeds,
  run,
  figures: payloadFigures,
  answer: payloadAnswer,
  limits: payloadLimits,
};
