import { borderResolution } from "../../performance/index.ts";
import { type Analysis, Cancelled, type Context, type Method, type Outcome, type ProjectView, type Warning } from "../contract.ts";
import { aircraftNeeds, isProblem } from "../inputs/flight-conditions.ts";
import { fullTrimMethod, fullTrimWarnings } from "../inputs/full-flight.ts";
import { envelopeAnswer, envelopeLimits } from "./answer.ts";
import { blockWords } from "./block-words.ts";
import { type EnvelopeExtent, envelopeComputation } from "./computation.ts";
import { envelopeFigures } from "./figures.ts";
import { type EnvelopeInputs, type EnvelopeOutputs, envelopeInputs, envelopeOutputs } from "./schema.ts";
import { type EnvelopeSetting, envelopeSetting } from "./setting.ts";

/** The coarse picture looks at so many altitudes and speeds. */
const coarseAltitudes = 2;
const coarseSpeeds = 10;
/** [m/s] */
const coarseResolution = 1;

function run(project: ProjectView, inputs: EnvelopeInputs, context: Context<EnvelopeOutputs>): Outcome<EnvelopeOutputs> {
  const setting = envelopeSetting(project, inputs);
  if (isProblem(setting)) return { problem: setting };
  const checked = () => {
    if (context.cancelled()) throw new Cancelled();
  };
  const whole: EnvelopeExtent = {
    packs: setting.flown,
    days: setting.days,
    altitudes: setting.altitudes,
    speeds: setting.speeds,
    resolution: borderResolution,
    isComplete: true,
  };
  if (setting.speeds.length > 2 * coarseSpeeds) coarse(setting, context, checked);
  const outputs = envelopeComputation(setting, whole, { checked, progress: (done, total, doing) => context.progress(done, total, doing) });
  return { outputs, assumed: setting.assumed, warnings };
}

function coarse(setting: EnvelopeSetting, context: Context<EnvelopeOutputs>, checked: () => void): void {
  const { altitudes, now } = setting;
  const speeds = spread(setting.speeds, coarseSpeeds);
  const extent: EnvelopeExtent = {
    packs: [now.blocks],
    days: [now.temperatureOffset],
    altitudes: spread(altitudes, coarseAltitudes),
    speeds,
    resolution: coarseResolution,
    isComplete: false,
  };
  const step = Math.max(...speeds.slice(1).map((speed, i) => speed - (speeds[i] as number)));
  context.partial(
    envelopeComputation(setting, extent, { checked, progress: () => {} }),
    `${blockWords(now.blocks)} alone, ${extent.altitudes.length === 1 ? "one altitude" : "two altitudes with straight borders between"}, speeds in steps of up to ${step.toFixed(0)} m/s: ` +
      `a border between two of them is found to ${coarseResolution} m/s, but a gap narrower than a step may be missed; no climb, no ceilings`,
  );
}

/** So many of a list, its ends among them. */
function spread(values: readonly number[], count: number): number[] {
  if (values.length <= count) return [...values];
  const picked = Array.from({ length: count }, (_, i) => values[Math.round((i * (values.length - 1)) / (count - 1))] as number);
  return [...new Set(picked)];
}

const method: Method = {
  ...fullTrimMethod,
  summary:
    `${fullTrimMethod.summary} Level flight is followed over airspeed in both rotor modes; where it ends the border is halved and named by the limit ` +
    "that stops it. Beside the trim's own limits every least-power flight is held against the steady winding temperature of its motors in air of that density, " +
    "the voltage its cells hold and their warmth, and the Mach number of the advancing tip.",
  checks: [...fullTrimMethod.checks, "ground-effect-hover"],
  sources: [...fullTrimMethod.sources, "cheeseman-bennett-1955", "hilpert-1933", "iec-60028"],
};

const warnings: readonly Warning[] = [
  ...fullTrimWarnings,
  {
    kind: "limits-at-least-power",
    grade: "note",
    message:
      "Motor heat, cells and tip Mach number are judged at the flight of least power: another trim might keep them where that one does not.",
  },
  {
    kind: "motor-cooling-recalled",
    grade: "care",
    message:
      "How a motor's cooling falls with air density, the exponent 0.618, is from memory; its thermal resistance counts as stated in air of 1.225 kg/m³.",
  },
  {
    kind: "rotor-strength-unknown",
    grade: "note",
    message:
      "The aircraft file states no centrifugal strength: the rotor's permitted speed range stands for it. The tip Mach limit is common practice.",
  },
];

/** Where over speed, altitude and temperature it flies, in both rotor modes, and what every border is made by. */
export const envelope: Analysis<EnvelopeInputs, EnvelopeOutputs> = {
  name: "envelope",
  question: "Where can it fly?",
  inputs: envelopeInputs,
  outputs: envelopeOutputs,
  method,
  example: {},
  needs: aircraftNeeds,
  run,
  figures: envelopeFigures,
  answer: envelopeAnswer,
  limits: envelopeLimits,
};
