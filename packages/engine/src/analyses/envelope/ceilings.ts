import type { FullPoint } from "../../equilibrium/index.ts";
import { ceiling, type EnvelopeTrimmer, levelAt } from "../../performance/index.ts";
import type { CeilingRow, EnvelopeOutputs, EnvelopeRow } from "./schema.ts";
import type { EnvelopeSetting } from "./setting.ts";

/** A steady climb that is left at the service ceiling: 100 ft/min, common practice [m/s]. */
const serviceClimb = 0.508;
/** Ceilings are looked for up to here [m]. */
const highest = 11_000;
const step = 2000;
const shortStep = 200;
const tolerance = 25;
/** Of the service ceiling, which no two ways of counting put nearer. */
const serviceTolerance = 100;

interface Hooks {
  progress(done: number): void;
  checked(): void;
}

/** Ceilings of every pack on every day, and of the pack in question on further days. They ask nothing of altitude limits. */
export function ceilingRows(
  setting: EnvelopeSetting,
  rows: readonly EnvelopeRow[],
  hooks: Hooks,
): { readonly rows: CeilingRow[]; readonly solves: EnvelopeOutputs["solves"] } {
  const solves = { converged: 0, limited: 0, failed: 0 };
  const found: CeilingRow[] = [];
  let done = 0;
  for (const blocks of setting.flown) {
    const days = blocks === setting.now.blocks ? setting.ceilingDays : setting.days;
    for (const day of days) {
      found.push(...ceilingsOf(setting, rows, { blocks, day }, hooks.checked, solves));
      done += 1;
      hooks.progress(done);
    }
  }
  return { rows: found, solves };
}

function ceilingsOf(
  setting: EnvelopeSetting,
  rows: readonly EnvelopeRow[],
  { blocks, day }: { readonly blocks: number; readonly day: number },
  checked: () => void,
  solves: { converged: number; limited: number; failed: number },
): CeilingRow[] {
  const used: EnvelopeTrimmer[] = [];
  const bottom = Math.min(setting.altitudes[0] as number, highest - step);
  /** From another ceiling, below which this one cannot lie, in short steps; else from the lowest altitude. */
  const search = (kind: CeilingRow["kind"], points: Flights, above?: CeilingRow, ground?: number): CeilingRow => {
    const lowest = above?.altitude ?? bottom;
    const isService = kind === "service";
    const shape = {
      lowest,
      highest,
      step: above === undefined ? step : shortStep,
      tolerance: isService ? serviceTolerance : tolerance,
    };
    const found = ceiling(shape, (altitude, flown) => {
      const trimmer = setting.trimmer({ blocks, altitude, day, groundHeight: ground }, checked);
      used.push(trimmer);
      return { trimmer, points: points(trimmer.conditions.air.density, flown) };
    });
    const { stop } = found;
    const altitude = found.altitude ?? above?.altitude ?? null;
    return {
      blocks,
      temperatureOffset: day,
      kind,
      altitude,
      isSought: stop !== undefined,
      limit: stop?.limit ?? null,
      family: stop?.family ?? null,
    };
  };
  const hover = () => [levelAt("clutch-closed", 0)];
  const near = setting.groundHeight;
  const far = search("hover", hover);
  const found = [far, ...(near === undefined ? [] : [search("hover near the ground", hover, far, near)])];
  const cheapest = cheapestRow(rows, blocks, day) ?? cheapestRow(rows, blocks, setting.now.temperatureOffset);
  if (cheapest) found.push(search("service", climbingFrom(cheapest, setting.modes)));
  for (const { trimmer } of used) {
    solves.converged += trimmer.counter.converged;
    solves.limited += trimmer.counter.limited;
    solves.failed += trimmer.counter.failed;
  }
  return found;
}

/** How to fly in air of a density, and beside what was flown last. */
type Flights = (density: number, flown: FullPoint | undefined) => readonly FullPoint[];

/** Speeds beside the last one that flew: the best one moves as the air gets thinner [1]. */
const beside = [1, 1.15, 0.87, 1.3] as const;

/** Climbs at and beside the dynamic pressure that flew last, in its mode; then at it in the other. */
function climbingFrom(cheapest: EnvelopeRow, modes: EnvelopeSetting["modes"]): Flights {
  const densities = new Map<FullPoint, number>();
  return (density, flown) => {
    const { airspeed } = flown ?? cheapest;
    const mode = modes.find((one) => one === (flown ?? cheapest).mode) ?? cheapest.mode;
    const here = airspeed * Math.sqrt(((flown && densities.get(flown)) ?? density) / density);
    const others = modes.filter((one) => one !== mode).map((other) => levelAt(other, here));
    const level = [...beside.map((factor) => levelAt(mode, here * factor)), ...others];
    const points = level.map((point) => ({ ...point, climbRate: serviceClimb }));
    for (const point of points) densities.set(point, density);
    return points;
  };
}

function cheapestRow(rows: readonly EnvelopeRow[], blocks: number, day: number): EnvelopeRow | undefined {
  const flying = rows.filter((row) => row.state === "flies" && row.blocks === blocks && row.temperatureOffset === day);
  const lowest = Math.min(...flying.map(({ altitude }) => altitude));
  return flying.filter(({ altitude }) => altitude === lowest).sort((a, b) => (a.electricPower as number) - (b.electricPower as number))[0];
}
