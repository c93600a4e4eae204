import { z } from "zod";
import type { QuantityKind } from "./kinds.ts";

/** Which condition of the sky, load or aircraft an input stands for; faces group and share inputs by it. */
export type InputRole =
  | "condition.payload"
  | "condition.pack"
  | "condition.altitude"
  | "condition.temperature"
  | "condition.wind"
  | "condition.cells"
  | "aircraft"
  | "mission";

export interface QuantityOptions {
  /** One sentence for forms, schemas and editors. */
  readonly description: string;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly role?: InputRole;
  /** Short label for forms and table heads; the property name is used without it. */
  readonly label?: string;
}

/**
 * A number in SI of one kind. In documents it is written with its unit ("24 kg ± 1 %"); at the door of an analysis
 * either so or as a plain SI number. The kind travels in the JSON Schema under `quantity`.
 */
export function quantity(kind: QuantityKind, options: QuantityOptions) {
  let schema = z.number();
  if (options.minimum !== undefined) schema = schema.min(options.minimum);
  if (options.exclusiveMinimum !== undefined) schema = schema.gt(options.exclusiveMinimum);
  if (options.maximum !== undefined) schema = schema.max(options.maximum);
  return schema.meta({
    description: options.description,
    quantity: kind,
    ...(options.role ? { role: options.role } : {}),
    ...(options.label ? { label: options.label } : {}),
  });
}
