import { describe, expect, it } from "vitest";
import type { AircraftDefinition } from "./definition.ts";
import { reducedRotorDrive } from "./reduced-drive.ts";

const motor = { resistance: 0.03 };

function driven(stages: readonly { readonly ratio: number; readonly constantLoss: number; readonly proportionalLoss: number }[]) {
  const line = {
    id: "drive",
    drives: "main",
    motors: [{ id: "motor", motor }],
    gearStages: stages,
    clutch: "one-way",
    constantEfficiency: 0.8,
  };
  return reducedRotorDrive({ driveLines: [line] } as unknown as AircraftDefinition, "main");
}

describe("gear stages as one", () => {
  it("of one stage are that stage to the last bit", () => {
    const { gearRatio, gearConstantLoss, gearProportionalLoss } = driven([{ ratio: 7.5, constantLoss: 25, proportionalLoss: 0.03 }]);
    expect([gearRatio, gearConstantLoss, gearProportionalLoss]).toEqual([7.5, 25, 0.03]);
  });

  it("pay the losses of a stage through those between it and the motor", () => {
    const { gearRatio, gearConstantLoss, gearProportionalLoss } = driven([
      { ratio: 3, constantLoss: 10, proportionalLoss: 0.02 },
      { ratio: 2.5, constantLoss: 15, proportionalLoss: 0.01 },
    ]);
    const shaft = 1000;
    // The stage at the rotor asks (1000 × 1.01 + 15) W of the stage at the motor, which asks 1.02 of that and 10 W.
    expect(shaft * (1 + gearProportionalLoss) + gearConstantLoss).toBeCloseTo((shaft * 1.01 + 15) * 1.02 + 10, 9);
    expect(gearRatio).toBe(7.5);
  });
});
