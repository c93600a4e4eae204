import { z } from "zod";
import { quantity } from "../../quantities/index.ts";

const path = (reference: string, description: string) => z.string().min(1).meta({ description, reference });

const elevation = z
  .strictObject({
    path: path("raster", "Path of the raster."),
    heightDatum: z.enum(["mean-sea-level", "ellipsoid"]).describe("What the heights of the raster are measured from."),
    geoidUndulation: quantity("length", {
      description: "Height of mean sea level above the WGS 84 ellipsoid in this area; with heightDatum ellipsoid only.",
      minimum: -150,
      maximum: 150,
    }).optional(),
  })
  .superRefine(({ heightDatum, geoidUndulation }, context) => {
    if (heightDatum === "ellipsoid" && geoidUndulation === undefined) {
      context.addIssue({ code: "custom", path: ["heightDatum"], message: "heights above the ellipsoid need geoidUndulation beside them" });
    }
    if (heightDatum === "mean-sea-level" && geoidUndulation !== undefined) {
      context.addIssue({ code: "custom", path: ["geoidUndulation"], message: "geoidUndulation goes with heightDatum ellipsoid only" });
    }
  });

const population = z.strictObject({
  path: path("raster", "Path of the raster."),
  measures: z.enum(["people-per-square-kilometer", "people-per-cell"]).describe("What the numbers of the raster count."),
});

/** What belongs together: the one document that every project has. SI after reading. */
export const projectDefinition = z.strictObject({
  format: z.literal(1).describe("Version of this document's format."),
  title: z.string().min(1).describe("What the project is called."),
  description: z.string().optional().describe("What it is about, in a few sentences."),
  aircraft: z.array(path("aircraft", "Path of an aircraft file.")).min(1).describe("Aircraft; the first one is taken where none is named."),
  missions: z
    .array(path("mission", "Path of a mission file."))
    .optional()
    .describe("Missions; the first one is taken where none is named."),
  terrain: z.array(elevation).optional().describe("Elevation rasters and what their heights are measured from."),
  population: z.array(population).optional().describe("Population rasters and what they count."),
  cautionsAccepted: z
    .strictObject({
      by: z.string().min(1).describe("Who has read the cautions."),
      on: z
        .string()
        .regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date such as "2031-04-30"')
        .describe("Date, year first."),
    })
    .optional()
    .describe("Who has read the cautions that stand on every result, and when."),
  displayUnits: z.enum(["si", "aviation"]).optional().describe("Units that results are shown in; si when absent."),
  demo: z.boolean().optional().describe("True when every value is invented: verdicts are then marked as demo values."),
});

export type ProjectDefinition = z.infer<typeof projectDefinition>;

/** What a project view holds under a path; a path such as "toString" is no exception. */
export function entryAt<Entry>(entries: Readonly<Record<string, Entry>>, path: string): Entry | undefined {
  return Object.hasOwn(entries, path) ? entries[path] : undefined;
}
