import { z } from "zod";

/** How a part is called in the file, in inputs and in results. */
export const partId = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/u, "must be lower-case words joined by hyphens, such as left-propeller")
  .describe("Name of this part; other entries refer to it.");
