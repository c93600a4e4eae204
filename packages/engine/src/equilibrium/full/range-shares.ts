import { type Airframe, rotorStateWidth } from "../../airframe/index.ts";
import type { TrimLimit } from "../trim-problem.ts";
import { attitudeIndex, type VariableLayout } from "./full-variables.ts";

const movable = 1e-9;

interface Share {
  readonly limit: TrimLimit;
  readonly share: number;
}

/**
 * Shares of the ranges that unknowns have: controls and attitude from the middle to the end, rotor speeds of their lowest and highest.
 *
 * @derivation distance from the middle over half the range; ratio of speeds
 */
export function rangeShares(airframe: Airframe, layout: VariableLayout, x: Float64Array): readonly Share[] {
  const range = (index: number) => {
    const low = layout.lower[index] as number;
    const high = layout.upper[index] as number;
    return { low, high, here: x[index] as number, moves: high - low > movable };
  };
  const fromMiddle = (index: number, name: string, family: TrimLimit["family"]): Share[] => {
    const { low, high, here, moves } = range(index);
    return moves ? [{ limit: { name, family }, share: Math.abs(here - (low + high) / 2) / ((high - low) / 2) }] : [];
  };
  const controls = airframe.controls.flatMap(({ id }, i) =>
    fromMiddle(layout.controlAt + i, `${id.replaceAll("-", " ")} range`, "control"),
  );
  const attitude = [...fromMiddle(attitudeIndex.pitch, "pitch angle", "rule"), ...fromMiddle(attitudeIndex.roll, "roll angle", "rule")];
  const many = airframe.rotors.length > 1;
  const speeds = airframe.rotors.flatMap(({ part }, i): Share[] => {
    const { low, high, here, moves } = range(layout.rotorAt + i * rotorStateWidth);
    const of = many ? `, ${part.id.replaceAll("-", " ")}` : "";
    return moves
      ? [
          { limit: { name: `lowest rotor speed${of}`, family: "strength" }, share: low / here },
          { limit: { name: `highest rotor speed${of}`, family: "strength" }, share: here / high },
        ]
      : [];
  });
  return [...controls, ...attitude, ...speeds];
}
