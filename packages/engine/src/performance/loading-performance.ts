import { type BatteryPack, type Endurance, enduranceAt } from "../drivetrain/battery/index.ts";
import type { Trimmed } from "../equilibrium/index.ts";
import { type SpeedOptimum, walkToBestSpeeds } from "./best-speeds.ts";
import { type CheapestFlight, cheapestFlight, poweredModes } from "./cheapest-flight.ts";
import type { Flown, Flyer } from "./flyer.ts";
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
export interface LoadingPerformance<F extends Flown = Trimmed> {
  readonly hover: CheapestFlight<F>;
  readonly hoverEndurance?: Endurance;
  readonly cruise?: SpeedOptimum<F>;
  readonly cruiseEndurance?: Endurance;
  readonly travel?: SpeedOptimum<F>;
  readonly travelEndurance?: Endurance;
  /** [m] */
  readonly range?: number;
}

/** State of charge at which flying must end so that the hover reserve is still in the pack [1]. */
function endingCharge<F extends Flown>(pack: BatteryPack, hover: CheapestFlight<F>, policy: ReservePolicy): number {
  if (policy.hoverTime <= 0 || hover.kind !== "flies") return policy.minimumStateOfCharge;
  const power = hover.trimmed.flown.electricPower;
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
export function loadingPerformance<F extends Flown>(
  flyer: Flyer<F>,
  pack: BatteryPack,
  policy: ReservePolicy,
  hooks: Pick<LineHooks, "cancelled">,
): LoadingPerformance<F> {
  const hover = cheapestFlight(flyer, { forward: 0, climb: 0 });
  const reserve = endingCharge(pack, hover, policy);
  hooks.cancelled();
  const [cruise, travel] = walkToBestSpeeds(flyer, poweredModes, [
    ({ flown }) => flown.electricPower,
    ({ flown }) => flown.electricPower / flown.airspeed,
  ]);
  const lasting = (power: number) => enduranceAt(pack, power, reserve);
  const travelEndurance = travel ? lasting(travel.electricPower) : undefined;
  return {
    hover,
    ...(hover.kind === "flies" ? { hoverEndurance: lasting(hover.trimmed.flown.electricPower) } : {}),
    ...(cruise ? { cruise, cruiseEndurance: lasting(cruise.electricPower) } : {}),
    ...(travel && travelEndurance ? { travel, travelEndurance, range: travelEndurance.duration * travel.airspeed } : {}),
  };
}
