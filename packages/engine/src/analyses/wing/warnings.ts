import type { Warning } from "../contract.ts";
import { sectionWarnings } from "../inputs/section-warnings.ts";
import type { WingBench } from "./bench.ts";
import type { WingOutputs } from "./output-schema.ts";
import type { WingInputs } from "./schema.ts";

/** Below this aspect ratio a lifting line lifts too much. Common practice. */
const leastAspect = 4;
/** Above this sweep a straight lifting line misplaces the load. Common practice [rad]. */
const mostSweep = 0.35;
const flatSpeeds = 0.3;

/** What to know before using the numbers. */
export function wingWarnings(bench: WingBench, outputs: WingOutputs, inputs: WingInputs): readonly Warning[] {
  const { reading } = bench;
  const warnings: Warning[] = [...reading.warnings];
  const say = (grade: Warning["grade"], kind: string, message: string): void => {
    warnings.push({ grade, kind, message });
  };
  warnings.push(...shapeWarnings(bench, outputs));
  const stalled = outputs.rows.filter((row) => row.way === "strips").length;
  if (stalled > 0)
    say(
      "note",
      "stalled",
      `${stalled} of ${outputs.rows.length} angles lie beyond the first stall on the span: lift and drag are rough there.`,
    );
  const { largestLift: allowed } = reading;
  if (allowed !== undefined && outputs.largestLift !== null && allowed > outputs.largestLift + 1e-4)
    say(
      "note",
      "largest-lift",
      `The file allows a lift coefficient of ${allowed.toFixed(3)}; its own polar reaches ${outputs.largestLift.toFixed(3)}, which is used.`,
    );
  const highest = Math.max(outputs.bestGlideLift ?? 0, outputs.bestPowerFactorLift ?? 0);
  if (reading.attached && outputs.largestLift !== null && highest > outputs.largestLift * 1.001)
    say(
      "care",
      "beyond-stall",
      `The best glide or the least sink asks for a lift coefficient of ${highest.toFixed(2)}; the largest, estimated from the section, is ${outputs.largestLift.toFixed(2)}. Give maximumLiftCoefficient to have it counted.`,
    );
  warnings.push(...streamWarnings(bench, outputs), ...flapWarnings(inputs));
  if (outputs.domain.nearest !== null)
    say(
      "note",
      "no-measurement",
      "Of wings only plain flaps at zero angle of attack and an aspect ratio of 3.13 were held against measurement; all else is held against theory and a worked example.",
    );
  return warnings;
}

function shapeWarnings({ reading }: WingBench, outputs: WingOutputs): readonly Warning[] {
  const warnings: Warning[] = [];
  const say = (grade: Warning["grade"], kind: string, message: string): void => {
    warnings.push({ grade, kind, message });
  };
  if (outputs.zeroLiftAngle === null)
    say("care", "no-zero-lift", "No angle without lift was found within 30 degrees: there is no glide, no slope and no stall.");
  else if (outputs.stallAngle === null) say("care", "no-stall", "Lift does not fall within 45 degrees: the stall speed is no limit.");
  if (reading.planform && reading.scaled) {
    if (outputs.aspectRatio < leastAspect)
      say(
        "care",
        "aspect-ratio",
        `Aspect ratio ${outputs.aspectRatio.toFixed(1)}: a lifting line gives too much lift below about ${leastAspect}.`,
      );
    if (Math.abs(reading.planform.sweep) > mostSweep)
      say("care", "sweep", "The lifting line is straight: with this much sweep the load along the span is misplaced.");
  }
  return warnings;
}

function streamWarnings({ reading, air }: WingBench, outputs: WingOutputs): readonly Warning[] {
  const fastest = Math.max(0, ...outputs.glide.map(({ airspeed }) => airspeed)) / air.speedOfSound;
  const mach: readonly Warning[] =
    fastest > flatSpeeds && outputs.glide.length > 0
      ? [{ grade: "note", kind: "mach-number", message: "The fastest of these glides pass Mach 0.3; the best ones may well be slower." }]
      : [];
  if (!reading.section || !reading.scaled) return mach;
  const numbers = outputs.rows.map((row) => row.reynoldsNumber);
  const range = [Math.min(...numbers), Math.max(...numbers)] as const;
  return [...sectionWarnings(reading.section, { reynoldsNumber: range, machNumber: [0, 0] }), ...mach];
}

function flapWarnings({ wing }: WingInputs): readonly Warning[] {
  if (!("flaps" in wing) || wing.flaps.every((flap) => flap.deflection === 0)) return [];
  const message = "Flaps: thin-section theory with losses of plain flaps and their gain in largest lift from memory.";
  return [{ grade: "note", kind: "flaps", message }];
}
