import { z } from "zod";
import { type QuantityKind, quantity } from "../../quantities/index.ts";

const column = (
  kind: QuantityKind,
  description: string,
  bounds: { minimum?: number; exclusiveMinimum?: number; maximum: number },
  names: string[],
) => quantity(kind, { description, ...bounds }).meta({ columnNames: names });

/** A row of a cell's table. */
export const cellRow = z.strictObject({
  stateOfCharge: column("dimensionless", "Charge left over charge when full.", { minimum: 0, maximum: 1 }, ["soc"]),
  temperature: column("temperature", "Cell temperature; one for the whole table when absent.", { minimum: 200, maximum: 380 }, [
    "t",
  ]).optional(),
  openCircuitVoltage: column("voltage", "Voltage at rest.", { exclusiveMinimum: 0, maximum: 10 }, ["ocv", "rest voltage"]),
  ohmicResistance: column("resistance", "Resistance that answers at once.", { exclusiveMinimum: 0, maximum: 10 }, ["r0", "resistance"]),
  fastResistance: column("resistance", "Resistance of the faster relaxation pair.", { minimum: 0, maximum: 10 }, ["r1"]).optional(),
  fastTimeConstant: column("time", "Time constant of that pair.", { minimum: 1e-3, maximum: 1e5 }, ["tau1"]).optional(),
  slowResistance: column("resistance", "Resistance of the slower relaxation pair.", { minimum: 0, maximum: 10 }, ["r2"]).optional(),
  slowTimeConstant: column("time", "Time constant of that pair.", { minimum: 1e-3, maximum: 1e6 }, ["tau2"]).optional(),
});

export type CellRow = z.infer<typeof cellRow>;
