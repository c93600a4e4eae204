import {
  continuousRating,
  fullDutyPoint,
  idlePoint,
  largestAtFullDuty,
  type MotorRating,
  shortRating,
  stallCurrent,
} from "../../drivetrain/motor/index.ts";
import { domainOfRows } from "../../published/index.ts";
import type { Analysis, Context, Outcome, ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { motorAnswer, motorLimits } from "./answer.ts";
import { motorFigures } from "./figures.ts";
import { type MotorReading, motorNeeds, motorReading } from "./input.ts";
import { type MotorOutputs, motorOutputs } from "./output-schema.ts";
import { askedPoints, motorRow, startOf, stateOutput } from "./rows.ts";
import { type MotorInputs, motorInputs } from "./schema.ts";
import { motorCoordinates, motorWarnings } from "./warnings.ts";

/** What does a motor draw and give, and how long does its winding bear it? */
export const motor: Analysis<MotorInputs, MotorOutputs> = {
  name: "motor",
  question: "What does this motor draw and give, and how long does its winding bear it?",
  inputs: motorInputs,
  outputs: motorOutputs,
  quick: true,
  method: {
    summary:
      "Speed constant, resistance that grows with temperature, and no-load current; controller and gear with a constant and a proportional loss; winding, or winding and housing, as heat capacities behind thermal resistances.",
    sources: ["drela-2007", "iec-60028", "steihaug-wolfbrandt-1979"],
    checks: ["first-order-motor"],
  },
  example: {
    motor: {
      speedConstant: "170 rpm/V",
      resistance: "60 mOhm",
      noLoadCurrent: "1.2 A",
      poleCount: 14,
      currentMaximum: "45 A",
      thermal: { heatCapacity: "120 J/K", thermalResistance: "0.6 K/W", temperatureMaximum: "110 degC" },
      controller: { constantLoss: "4 W", proportionalLoss: 0.03, dutyMaximum: 0.98 },
    },
    voltage: "52 V",
    load: { rotationRate: "6000 rpm", torque: "1.1 N m" },
    points: [{ throttle: 0.4 }, { throttle: 0.6 }, { throttle: 0.8 }, { throttle: 1 }],
  },
  needs: (inputs) => motorNeeds(inputs),
  run: (project, inputs, context) => run(project, inputs, context),
  figures: (outputs, inputs) => motorFigures(outputs, inputs),
  answer: (outputs) => motorAnswer(outputs),
  limits: (outputs, inputs) => motorLimits(outputs, inputs),
};

function run(project: ProjectView, inputs: MotorInputs, context: Context<MotorOutputs>): Outcome<MotorOutputs> {
  const reading = motorReading(project, inputs);
  if (isProblem(reading)) return { problem: reading };
  const points = askedPoints(reading, inputs);
  const rows = points.map((point, index) => {
    context.progress(index, points.length, "points");
    return motorRow(point, reading, inputs);
  });
  const outputs = { rows, ...characteristics(reading, inputs) };
  const domain = domainOfRows(
    "motor",
    rows.map((row) => motorCoordinates(reading, inputs, row.current)),
  );
  return {
    outputs: { ...outputs, domain },
    warnings: motorWarnings(reading, inputs, { ...outputs, domain }),
    assumed: reading.assumed,
  };
}

const curvePoints = 41;

function characteristics(reading: MotorReading, inputs: MotorInputs): Omit<MotorOutputs, "rows" | "domain"> {
  const { definition, thermal, currentMaximum = Number.POSITIVE_INFINITY } = reading;
  const { voltage } = inputs;
  const start = startOf(inputs);
  const idle = idlePoint(definition, voltage, start);
  const stall = stallCurrent(definition, voltage, start);
  const best = largestAtFullDuty(definition, voltage, start, ({ efficiency }) => efficiency ?? 0);
  const strongest = largestAtFullDuty(definition, voltage, start, ({ shaftPower }) => shaftPower);
  const most = Math.min(strongest.current, currentMaximum);
  const least = Math.min(idle?.current ?? 0, most);
  const conditions = { voltage, ambient: inputs.ambientTemperature, start };
  const continuous = thermal ? continuousRating(definition, thermal, conditions, currentMaximum) : null;
  const short = thermal ? shortRating(definition, thermal, conditions, currentMaximum, inputs.shortTime) : null;
  return {
    bestEfficiency: best.shaftPower > 0 ? stateOutput(best) : null,
    noLoad: idle ? stateOutput(idle) : null,
    stallCurrent: stall,
    largestShaftPower: strongest.shaftPower > 0 ? strongest.shaftPower : null,
    continuousPower: continuous?.point.shaftPower ?? null,
    continuous: ratingOutput(continuous),
    shortTimePower: short?.point.shaftPower ?? null,
    shortTime: ratingOutput(short),
    given: {
      dutyMaximum: definition.controller.dutyMaximum,
      currentMaximum: reading.currentMaximum ?? null,
      continuousElectricPower: reading.continuousElectricPower ?? null,
      temperatureMaximum: thermal?.temperatureMaximum ?? null,
    },
    curve: Array.from({ length: curvePoints }, (_, i) =>
      stateOutput(fullDutyPoint(definition, voltage, start, least + ((most - least) * i) / (curvePoints - 1))),
    ),
  };
}

function ratingOutput(rating: MotorRating | null): MotorOutputs["continuous"] {
  return rating ? { ...stateOutput(rating.point), limitedBy: rating.limitedBy } : null;
}
