import { z } from "zod";
import { builtInSectionNames, type SectionDefinition, sectionPolars } from "../../aerodynamics/airfoil-section/index.ts";
import { quantity } from "../../quantities/index.ts";
import type { Need, Problem, ProjectView, Warning } from "../contract.ts";
import { tableInput, tableNeeds, tableRows } from "./table-input.ts";

const genericSection = z
  .strictObject({
    kind: z.literal("generic"),
    liftSlope: quantity("dimensionless", { description: "Slope of lift at Mach 0, per radian.", exclusiveMinimum: 0, maximum: 8 }),
    cd0: quantity("dimensionless", { description: "Drag coefficient at zero angle.", exclusiveMinimum: 0, maximum: 0.5 }),
    cd1: quantity("dimensionless", {
      description: "Drag per radian of angle, with its sign: lowest drag then lies to one side.",
      minimum: -0.1,
      maximum: 0.1,
    }).default(0),
    cd2: quantity("dimensionless", { description: "Drag per radian of angle squared.", minimum: 0, maximum: 5 }).default(0),
    stallAngle: quantity("angle", { description: "Angle at which the flow is half separated.", minimum: 0.05, maximum: 0.6 }),
  })
  .refine((section) => section.cd1 ** 2 < 4 * section.cd0 * Math.max(section.cd2, 1e-12) || section.cd1 === 0, {
    error: "drag must stay positive at every angle: cd1² must be less than 4 cd0 cd2",
  })
  .meta({ label: "Five numbers" });

const camberedSection = z
  .strictObject({
    kind: z.literal("cambered"),
    thickness: quantity("dimensionless", { description: "Largest thickness over chord.", minimum: 0.01, maximum: 0.25 }),
    camber: quantity("dimensionless", { description: "Largest height of the mean line over chord.", minimum: 0, maximum: 0.12 }).default(0),
    zeroLiftAngle: quantity("angle", {
      description: "Angle without lift, instead of the one that follows from camber.",
      minimum: -0.25,
      maximum: 0.05,
    }).optional(),
    designLift: quantity("dimensionless", {
      description: "Lift coefficient of least drag, instead of the one that follows from camber.",
      minimum: -0.2,
      maximum: 1.5,
    }).optional(),
    momentCoefficient: quantity("dimensionless", {
      description: "Pitching moment about the quarter chord, nose up positive, instead of the one that follows from camber.",
      minimum: -0.4,
      maximum: 0.1,
    }).optional(),
    largestLift: quantity("dimensionless", {
      description: "Largest lift coefficient at a Reynolds number of 100 000, instead of the one that follows from camber.",
      minimum: 0.3,
      maximum: 2.5,
    }).optional(),
  })
  .meta({ label: "By thickness and camber, with Reynolds number" });

/** A row of a section's table. */
export const sectionRow = z.strictObject({
  angle: quantity("angle", { description: "Angle of attack.", minimum: -Math.PI - 1e-9, maximum: Math.PI + 1e-9 }).meta({
    columnNames: ["alpha", "angle of attack"],
  }),
  reynoldsNumber: quantity("dimensionless", { description: "Reynolds number on the chord.", minimum: 100, maximum: 1e9 })
    .optional()
    .meta({ columnNames: ["re", "reynolds"] }),
  machNumber: quantity("dimensionless", { description: "Mach number.", minimum: 0, maximum: 0.95 })
    .optional()
    .meta({ columnNames: ["m", "mach"] }),
  liftCoefficient: quantity("dimensionless", { description: "Lift coefficient.", minimum: -5, maximum: 5 }).meta({
    columnNames: ["cl", "lift"],
  }),
  dragCoefficient: quantity("dimensionless", { description: "Drag coefficient.", minimum: 1e-6, maximum: 5 }).meta({
    columnNames: ["cd", "drag"],
  }),
  momentCoefficient: quantity("dimensionless", {
    description: "Pitching moment coefficient about the quarter chord, nose up positive.",
    minimum: -2,
    maximum: 2,
  })
    .optional()
    .meta({ columnNames: ["cm", "moment"] }),
});

/** A blade or wing section: by name, by a law, or by a table over angle and, where known, Reynolds and Mach number. */
export const sectionInput = z
  .union([
    z.enum(builtInSectionNames).meta({ label: "Built in" }),
    genericSection,
    camberedSection,
    tableInput(sectionRow, { description: "Rows of a table over angle, Reynolds and Mach number.", fewest: 3 }),
  ])
  .meta({
    description:
      "Section: a built-in table, a law of five numbers, a law by thickness and camber with Reynolds number, or a table over angle, Reynolds and Mach number.",
  });

export type SectionInput = z.infer<typeof sectionInput>;

export type SectionReading =
  | { readonly definition: SectionDefinition; readonly warnings: readonly Warning[]; readonly problem?: never }
  | { readonly problem: Problem; readonly definition?: never };

/** What must be read before these sections can be used. */
export function sectionNeeds(...sections: readonly (SectionInput | undefined)[]): readonly Need[] {
  return tableNeeds(...sections);
}

/**
 * The section that an input means, with what to know about it.
 *
 * @param dragIncrement added to the drag coefficient at every angle: roughness, fabric, joints [1]
 */
export function sectionDefinitionOf(input: SectionInput, view: ProjectView, dragIncrement = 0): SectionReading {
  if (typeof input === "string") return { definition: { kind: "built-in", name: input, dragIncrement }, warnings: [] };
  if ("kind" in input) {
    if (input.kind === "generic") return { definition: { ...input, cd0: input.cd0 + dragIncrement }, warnings: [] };
    const { thickness, camber, ...given } = input;
    return { definition: { ...given, thickness, camber, dragIncrement }, warnings: [] };
  }
  const table = tableRows(view, input, sectionRow);
  if (table.problem) return table;
  const sorted = sectionPolars(table.rows, table.place);
  if (sorted.slip !== undefined) return { problem: { kind: "section-table", message: sorted.slip } };
  const { polars, remarks } = sorted;
  const warnings = remarks.map(
    (remark): Warning => ({ grade: "care", kind: "section-table", message: `Section ${table.name}: ${remark}` }),
  );
  return { definition: { kind: "table", name: table.name, polars, dragIncrement }, warnings };
}
