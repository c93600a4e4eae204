import { quantity } from "../quantities/index.ts";

/** A share from 0 to 1. */
export const fraction = (description: string) => quantity("dimensionless", { description, minimum: 0, maximum: 1 });
/** Above zero. */
export const positive = (kind: Parameters<typeof quantity>[0], description: string) => quantity(kind, { description, exclusiveMinimum: 0 });
/** Zero or above. */
export const notNegative = (kind: Parameters<typeof quantity>[0], description: string) => quantity(kind, { description, minimum: 0 });
