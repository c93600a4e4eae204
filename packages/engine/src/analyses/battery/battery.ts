import { runPack } from "../../drivetrain/battery/index.ts";
import type { Analysis, Context, Outcome, ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { cellNeeds } from "./cell-input.ts";
import { batteryAnswer, batteryLimits, batteryWarnings } from "./faces.ts";
import { batteryFigures } from "./figures.ts";
import { loadNeeds } from "./load-input.ts";
import { type BatteryOutputs, batteryOutputs } from "./output-schema.ts";
import { batteryOutputsOf } from "./outputs.ts";
import { type BatteryInputs, batteryInputs } from "./schema.ts";
import { batterySetting } from "./setting.ts";

/** How long does this pack last under this load, and what stops it? */
export const battery: Analysis<BatteryInputs, BatteryOutputs> = {
  name: "battery",
  question: "How long does this pack last, and what stops it?",
  inputs: batteryInputs,
  outputs: batteryOutputs,
  quick: true,
  method: {
    summary:
      "Equivalent circuit of each block: rest voltage over state of charge, ohmic resistance and up to two relaxation pairs over charge and temperature, " +
      "and a lag of the electrodes' surface that grows in the cold. Blocks share the load by Kirchhoff's laws with their own charge, age and temperature. " +
      "Each block warms itself and cools to the air of its bay. Steps hold the load on their mean and integrate charge, pairs and heat exactly, so the energy " +
      "closes to round-off; limits are located inside a step. Not modelled: entropy heat, heat from block to block, charging, self-discharge.",
    sources: ["plett-2015", "bernardi-1985", "kollmeyer-2017", "cold-cells-2024"],
    checks: ["nca-18650-pulse", "cold-cells-1c"],
  },
  example: {
    cell: "reference-nca",
    series: 14,
    blocks: 13,
    wiringResistance: "4 mOhm",
    isolatorResistance: "2 mOhm",
    ambientTemperature: "-10 degC",
    load: { power: "1.3 kW" },
    limits: { continuousCurrent: "10 A", shortTimeCurrent: "15 A", shortTime: "10 s", lowestStateOfCharge: "20 %" },
    timeStep: "10 s",
  },
  needs: (inputs) => [...cellNeeds(inputs.cell), ...loadNeeds(inputs.load)],
  run,
  figures: batteryFigures,
  answer: (outputs) => batteryAnswer(outputs),
  limits: (outputs) => batteryLimits(outputs),
};

function run(view: ProjectView, inputs: BatteryInputs, context: Context<BatteryOutputs>): Outcome<BatteryOutputs> {
  const setting = batterySetting(view, inputs, context);
  if (isProblem(setting)) return { problem: setting };
  const { assumed, plan } = setting;
  const record = runPack(plan);
  if (record.end === "too many steps" || record.end === "too many rows") {
    const what = record.end === "too many steps" ? `${plan.mostSteps} steps` : `${plan.mostRowValues} values in rows`;
    const message = `After ${what} the run had come to ${record.duration.toFixed(0)} s and was broken off. Give a longer timeStep or rowInterval, or a shorter load.`;
    return { problem: { kind: "too-long", message, duration: record.duration }, assumed };
  }
  const outputs = batteryOutputsOf(setting, record);
  return { outputs, warnings: batteryWarnings(setting, outputs), assumed };
}
