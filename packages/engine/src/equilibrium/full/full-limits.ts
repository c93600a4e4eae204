import type { Airframe } from "../../airframe/index.ts";
import type { TrimLimit } from "../trim-problem.ts";

/** What may stop a six-component trim, in the order of the program's inequalities. */
export interface FullLimit extends TrimLimit {
  /** Where its measure comes from. */
  readonly of:
    | { readonly kind: "clutch" | "stall" | "branch" | "flap"; readonly rotor: number }
    | { readonly kind: "lift-high" | "lift-low"; readonly surface: number }
    | { readonly kind: "motor-power" | "motor-current" | "motor-voltage"; readonly line: number }
    | { readonly kind: "block-current" };
}

const words = (id: string) => id.replaceAll("-", " ");

/** The limits of an aircraft with these drive lines running. @derivation not a formula */
export function fullLimits(airframe: Airframe, running: readonly boolean[]): readonly FullLimit[] {
  const many = airframe.rotors.length > 1;
  const rotors = airframe.rotors.flatMap((rotor, index): FullLimit[] => {
    const of = many ? `, ${words(rotor.part.id)}` : "";
    const line = airframe.rotorLine(index);
    const oneWay = line >= 0 && running[line] === true && airframe.lines[line]?.clutch === "one-way";
    return [
      ...(oneWay ? [{ name: `clutch torque${of}`, family: "control" as const, of: { kind: "clutch" as const, rotor: index } }] : []),
      { name: `stall margin${of}`, family: "air", of: { kind: "stall", rotor: index } },
      { name: `stall margin${of}`, family: "air", of: { kind: "branch", rotor: index } },
      { name: `flapping${of}`, family: "control", of: { kind: "flap", rotor: index } },
    ];
  });
  const surfaces = airframe.conditions.aircraft.surfaces.flatMap((part, surface): FullLimit[] => [
    { name: `${words(part.id)} stall`, family: "air", of: { kind: "lift-high", surface } },
    { name: `${words(part.id)} stall, other side`, family: "air", of: { kind: "lift-low", surface } },
  ]);
  const motors = airframe.lines.flatMap((line, index): FullLimit[] =>
    running[index] === true && line.motors.length > 0
      ? [
          { name: `${words(line.id)} motor power`, family: "power", of: { kind: "motor-power", line: index } },
          { name: `${words(line.id)} motor current`, family: "power", of: { kind: "motor-current", line: index } },
          { name: `${words(line.id)} motor voltage`, family: "power", of: { kind: "motor-voltage", line: index } },
        ]
      : [],
  );
  return [...rotors, ...surfaces, ...motors, { name: "block current", family: "power", of: { kind: "block-current" } }];
}
