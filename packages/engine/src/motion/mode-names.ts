import type { LinearState, Mode, ModeGroup, StateKind } from "./linear-motion.ts";

const longitudinal: readonly StateKind[] = ["speed", "heave", "pitch-rate", "pitch"];
const lateral: readonly StateKind[] = ["sideslip", "roll-rate", "yaw-rate", "roll"];
const rotor: readonly StateKind[] = ["rotor-speed", "inflow"];

type Shares = (...kinds: readonly StateKind[]) => number;
type Unnamed = Omit<Mode, "name" | "group">;

function sharesOf(mode: Unnamed, states: readonly LinearState[]): Shares | undefined {
  const { participation } = mode;
  if (!participation) return undefined;
  return (...kinds) => states.reduce((sum, { kind }, i) => sum + (kinds.includes(kind) ? (participation[i] ?? 0) : 0), 0);
}

/** The group that holds two thirds of a mode. */
export function modeGroup(mode: Unnamed, states: readonly LinearState[]): ModeGroup {
  const share = sharesOf(mode, states);
  if (!share) return "coupled";
  const most = 2 / 3;
  if (share(...rotor) > most) return "rotor";
  if (share(...longitudinal) > most) return "longitudinal";
  return share(...lateral) > most ? "lateral" : "coupled";
}

/**
 * Names of the trade by the states that take part most: an oscillation of heave and pitch rate is the short period, one of speed
 * and attitude the phugoid (in hover too), one of sideslip and yaw the Dutch roll; real roots have the name of their largest state, with
 * "roll" for roll rate and "spiral" for bank. A second mode of a name is numbered.
 */
export function modeNames(modes: readonly Unnamed[], states: readonly LinearState[]): readonly string[] {
  const taken = new Map<string, number>();
  return modes.map((mode) => {
    const name = nameOf(mode, sharesOf(mode, states));
    const count = (taken.get(name) ?? 0) + 1;
    taken.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  });
}

function nameOf({ imaginary }: Unnamed, share: Shares | undefined): string {
  const oscillation = imaginary > 0;
  if (!share) return oscillation ? "oscillation" : "root";
  const [along, across, speed, inflow] = [share(...longitudinal), share(...lateral), share("rotor-speed"), share("inflow")];
  const most = Math.max(along, across, speed, inflow);
  if (speed === most) return "rotor speed";
  if (inflow === most) return "inflow";
  if (along === most) {
    if (oscillation) return share("heave", "pitch-rate") > share("speed", "pitch") ? "short period" : "phugoid";
    return largestOf(share, [
      ["speed", "speed"],
      ["heave", "heave"],
      ["pitch-rate", "pitch"],
      ["pitch", "attitude"],
    ]);
  }
  if (oscillation) return share("roll-rate", "roll") > share("sideslip", "yaw-rate") ? "roll and spiral" : "Dutch roll";
  return largestOf(share, [
    ["roll-rate", "roll"],
    ["roll", "spiral"],
    ["yaw-rate", "yaw"],
    ["sideslip", "sideslip"],
  ]);
}

function largestOf(share: Shares, names: readonly (readonly [StateKind, string])[]): string {
  let best = "root";
  let most = -1;
  for (const [kind, name] of names) {
    const part = share(kind);
    if (part > most) {
      most = part;
      best = name;
    }
  }
  return best;
}
