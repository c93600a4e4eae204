import { type BatteryPack, type Endurance, enduranceAt } from "../drivetrain/battery/index.ts";
import type { FlightConditions, TrimRotor } from "../equilibrium/index.ts";
import { type SpeedOptimum, walkToBestSpeeds } from "./best-speeds.ts";
import { type CheapestFlight, cheapestFlight, poweredModes } from "./cheapest-flight.ts";
import type { LineHooks } from "./speed-line.ts";

/** What must be left in the pack when the aircraft lands. */
export interface ReservePolicy {
  /** [1] */
  readonly minimumStateOfCharge: number;
  /** Hover time kept on top [s]. */
  readonly hoverTime: number;
}

/** Common practice: a fifth of the charge, no further hover. */
export const commonReserve: ReservePolicy = { minimumStateOfCharge: 0.2, hoverTime: 0 };

/** What one loading can do in still air: hover only, least power, best range; no climb or transition. */
export interface LoadingPerformance {
  readonly hover: CheapestFlight;
  readonly hoverEndurance?: Endurance;
  readonly cruise?: SpeedOptimum;
  readonly cruiseEndurance?: Endurance;
  readonly travel?: SpeedOptimum;
  readonly travelEndurance?: Endurance;
  /** [m] */
  readonly range?: number;
}

/** State of charge at which flying must end so that the hover reserve is still in the pack [1]. */
function endingCharge(pack: BatteryPack, hover: CheapestFlight, policy: ReservePolicy): number {
  if (policy.hoverTime <= 0 || hover.kind !== "flies") return policy.minimumStateOfCharge;
  const power = hover.trimmed.evaluation.power.electric;
  const lasts = (from: number) => {
    const endurance = enduranceAt(pack, power, policy.minimumStateOfCharge, from);
    return endurance.ends === "reserve" && endurance.duration >= policy.hoverTime;
  };
  if (!lasts(1)) return 1;
  let low = policy.minimumStateOfCharge;
  let high = 1;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (lasts(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Hover, endurance and range of one loading. The pack starts full. */
export function loadingPerformance(
  conditions: FlightConditions,
  pack: BatteryPack,
  policy: ReservePolicy,
  rotor: TrimRotor,
  hooks: Pick<LineHooks, "cancelled">,
): LoadingPerformance {
  const hover = cheapestFlight(conditions, { forward: 0, climb: 0 }, rotor);
  const reserve = endingCharge(pack, hover, policy);
  hooks.cancelled();
  const [cruise, travel] = walkToBestSpeeds(conditions, poweredModes, rotor, [
    (trimmed) => trimmed.evaluation.power.electric,
    (trimmed) => trimmed.evaluation.power.electric / trimmed.evaluation.airspeed,
  ]);
  const lasting = (power: number) => enduranceAt(pack, power, reserve);
  const travelEndurance = travel ? lasting(travel.electricPower) : undefined;
  return {
    hover,
    ...(hover.kind === "flies" ? { hoverEndurance: lasting(hover.trimmed.evaluation.power.electric) } : {}),
    ...(cruise ? { cruise, cruiseEndurance: lasting(cruise.electricPower) } : {}),
    ...(travel && travelEndurance ? { travel, travelEndurance, range: travelEndurance.duration * travel.airspeed } : {}),
  };
}
