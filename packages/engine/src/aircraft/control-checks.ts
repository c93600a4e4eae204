import type { AircraftDefinition } from "./aircraft-entries.ts";
import { type Complain, uniqueIds, unknown } from "./complaint.ts";
import type { Control } from "./control.ts";
import type { ControlPart } from "./control-part.ts";

type PartKind = "rotor" | "propeller" | "surface";

/** Which kinds of part can move so. */
const movedKinds: Readonly<Record<ControlPart["what"], readonly PartKind[]>> = {
  collective: ["rotor"],
  "longitudinal-cyclic": ["rotor"],
  "lateral-cyclic": ["rotor"],
  "tip-speed": ["rotor"],
  "tilt-back": ["rotor", "propeller"],
  "tilt-right": ["rotor", "propeller"],
  thrust: ["propeller"],
  deflection: ["surface"],
  movable: ["surface"],
};

/** Controls and how they are mixed. */
export function controlChecks(aircraft: AircraftDefinition, complain: Complain): void {
  const { controls, mixing = [] } = aircraft;
  uniqueIds({ controls }, complain);
  const moved = new Map<string, string>();
  controls.forEach((control, index) => {
    const at = (path: readonly (string | number)[], message: string) => complain(["controls", index, ...path], message);
    partMoved(aircraft, control, at);
    const motion = `${control.part} ${control.what}${control.what === "movable" ? ` ${edges(control)}` : ""}`;
    const other = moved.get(motion);
    if (other !== undefined) at(["what"], `${control.what} of ${control.part} is moved by ${other} already`);
    moved.set(motion, control.id);
    for (const setting of ["setting", "clutchOpen"] as const) {
      const given = control[setting];
      if (given !== undefined) settingChecks(given, (path, message) => at([setting, ...path], message));
    }
  });
  const names = controls.map(({ id }) => id);
  mixing.forEach(({ control }, index) => {
    if (!names.includes(control)) complain(["mixing", index, "control"], unknown("control", control, names));
    const first = mixing.findIndex((row) => row.control === control);
    if (first < index) complain(["mixing", index, "control"], `${control} has its row at mixing[${first}] already`);
  });
}

function edges(control: Extract<ControlPart, { readonly what: "movable" }>): string {
  return control.movables
    .map(({ id }) => id)
    .toSorted()
    .join(" ");
}

function partMoved({ rotors, propellers, surfaces }: AircraftDefinition, control: ControlPart, at: Complain): void {
  const kinds = movedKinds[control.what];
  const parts = { rotor: rotors, propeller: propellers, surface: surfaces } as const;
  const able = kinds.flatMap((kind) => parts[kind].map(({ id }) => id));
  if (!able.includes(control.part)) {
    const kind = (Object.keys(parts) as PartKind[]).find((one) => parts[one].some(({ id }) => id === control.part));
    const sentence =
      kind === undefined
        ? unknown(kinds.join(" or "), control.part, able)
        : `${control.part} is a ${kind} and has no ${control.what}; a ${kinds.join(" or a ")} has one`;
    at(["part"], sentence);
    return;
  }
  if (control.what !== "movable") return;
  const known = surfaces.find(({ id }) => id === control.part)?.movables.map(({ id }) => id) ?? [];
  control.movables.forEach(({ id }, edge) => {
    if (!known.includes(id)) at(["movables", edge, "id"], unknown(`trailing edge of ${control.part}`, id, known));
  });
}

function settingChecks(setting: Control, at: Complain): void {
  if (setting.kind === "fixed") return;
  if (setting.minimum > setting.maximum) at(["minimum"], "is above maximum");
  const within = (value: number) => value >= setting.minimum && value <= setting.maximum;
  if (setting.kind === "ground-set" && !within(setting.value)) at(["value"], "lies outside minimum and maximum");
  if (setting.kind !== "scheduled") return;
  setting.schedule.forEach(({ airspeed, value }, point) => {
    if (!within(value)) at(["schedule", point, "value"], "lies outside minimum and maximum");
    const before = setting.schedule[point - 1];
    if (before !== undefined && airspeed < before.airspeed) at(["schedule", point, "airspeed"], "airspeeds of a schedule rise");
  });
}
