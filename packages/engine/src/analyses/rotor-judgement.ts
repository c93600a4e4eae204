import { builtInSectionProvenance, sectionLaw } from "../aerodynamics/airfoil-section/index.ts";
import type { NoOperatingPoint, RotorWorkspace } from "../aerodynamics/rotor/index.ts";
import type { Answer, Limit, Problem, Warning } from "./contract.ts";
import type { RotorInputs, RotorOutputs } from "./rotor-schema.ts";
import { reading, words } from "./tokens.ts";

/** Highest Mach number at which the compressibility factor alone may be trusted, and the one at which it is not computed. */
const trustedTipMach = 0.7;
const largestTipMach = 0.9;
/** Advance ratio up to which the rotor has been compared with measurements. */
const comparedAdvanceRatio = 0.7;

/** Below this advance ratio the uneven inflow of hover matters, which a factor this large stands for. */
const hoverAdvanceRatio = 0.05;
const usualHoverFactor = 1.1;
const stallCollectiveSlack = 0.002;

/** Why there is no answer, with the numbers. */
export function rotorProblem(failed: NoOperatingPoint, inputs: RotorInputs): Problem {
  switch (failed.kind) {
    case "not-converged":
      return {
        kind: "not-converged",
        message: `Inflow and flapping could not be solved; a residual of ${failed.residual.toExponential(1)} was left after ${failed.iterations} sweeps.`,
        residual: Number.isFinite(failed.residual) ? failed.residual : null,
        iterations: failed.iterations,
      };
    case "thrust-unavailable":
      return {
        kind: "thrust-unavailable",
        message: `The rotor stalls first: its largest steady thrust here is ${failed.largestThrust.toFixed(1)} N, ${(inputs.thrust ?? 0).toFixed(1)} N were asked for.`,
        largestThrust: failed.largestThrust,
      };
    case "thrust-below-range":
      return {
        kind: "thrust-below-range",
        message: `Even at the lowest collective the rotor makes ${failed.smallestThrust.toFixed(1)} N; ${(inputs.thrust ?? 0).toFixed(1)} N were asked for.`,
        smallestThrust: failed.smallestThrust,
      };
    case "no-equilibrium":
      return inputs.shaftTorque === 0
        ? { kind: "no-autorotation", message: `No autorotation: ${failed.reason}.`, sought: failed.seek }
        : { kind: "no-equilibrium", message: `No equilibrium: ${failed.reason}.`, sought: failed.seek };
  }
}

/** Refused because the section law means nothing there; undefined when it does. */
export function tipMachProblem(outputs: RotorOutputs): Problem | undefined {
  if (outputs.advancingTipMach <= largestTipMach) return undefined;
  return {
    kind: "outside-model",
    message: `The advancing tip moves at Mach ${outputs.advancingTipMach.toFixed(2)}; the section law ends at ${largestTipMach}.`,
    advancingTipMach: outputs.advancingTipMach,
    largest: largestTipMach,
  };
}

/** What to know before using the numbers. */
export function rotorWarnings(outputs: RotorOutputs, inputs: RotorInputs, workspace: RotorWorkspace): readonly Warning[] {
  const { section, articulation, precone } = inputs.rotor;
  const warnings: Warning[] = [];
  const add = (grade: Warning["grade"], kind: string, message: string): void => {
    warnings.push({ grade, kind, message });
  };
  if (outputs.state === "vortex ring")
    add("care", "vortex-ring", "The rotor descends into its own wake (vortex ring): not recommended, and the power is uncertain by 20 %.");
  if (stalled(outputs))
    add("care", "stalled", "The collective lies beyond the one of largest steady thrust: the rotor is stalled and the numbers are rough.");
  if (outputs.advancingTipMach > trustedTipMach)
    add(
      "care",
      "tip-mach",
      `The advancing tip moves at Mach ${outputs.advancingTipMach.toFixed(2)}; drag rise above ${trustedTipMach} is not computed.`,
    );
  if (outputs.advanceRatio > comparedAdvanceRatio)
    add("care", "advance-ratio", `No measurement beyond advance ratio ${comparedAdvanceRatio} has been compared: extrapolated.`);
  if (typeof section === "string") {
    const { reynolds } = sectionLaw(workspace.model.section);
    const lowest = reynolds[0] ?? 0;
    const highest = reynolds[reynolds.length - 1] ?? 0;
    if (outputs.reynoldsNumber < lowest || outputs.reynoldsNumber > highest)
      add(
        "care",
        "reynolds-number",
        `Reynolds number ${Math.round(outputs.reynoldsNumber)} lies outside the section's ${lowest} to ${highest}; the nearest values are used.`,
      );
    const { provenance, note } = builtInSectionProvenance(section);
    if (provenance !== "read") add("note", "section-data", `Section ${section} is ${provenance}. ${note}`);
  }
  if (outputs.state === "normal" && outputs.advanceRatio < hoverAdvanceRatio && inputs.inducedPowerFactor < usualHoverFactor)
    add(
      "note",
      "hover-inflow",
      "Near hover the inflow is spread evenly over the disc: power comes out low by 5 to 15 % on untwisted blades; an induced power factor of 1.1 to 1.2 is common practice.",
    );
  if (articulation === "hinged" && precone !== 0)
    add("note", "precone", "The precone of hinged blades has no effect: their coning is computed.");
  if (inputs.collective === undefined)
    add("note", "collective", "Collective at a given thrust is good to 1 to 1.5 degrees: short blades make less thrust than computed.");
  return warnings;
}

/** Beyond the collective of the largest thrust, by more than the search for it can be wrong. */
function stalled({ collective, largestThrustCollective }: RotorOutputs): boolean {
  return largestThrustCollective !== null && collective > largestThrustCollective + stallCollectiveSlack;
}

export function rotorLimits(outputs: RotorOutputs): readonly Limit[] {
  const limits: Limit[] = [];
  const where = outputs.airspeed > 0 ? `at ${outputs.airspeed.toFixed(1)} m/s` : "in hover";
  if (outputs.largestThrust !== null && outputs.largestThrust > 0) {
    const share = Math.max(outputs.thrust / outputs.largestThrust, stalled(outputs) ? 1 : 0);
    limits.push({ name: "rotor stall", family: "air", share, side: "upper", where, binding: false });
  }
  limits.push({
    name: "tip Mach number",
    family: "air",
    share: outputs.advancingTipMach / largestTipMach,
    side: "upper",
    where,
    binding: false,
  });
  const largest = Math.max(...limits.map((limit) => limit.share));
  return limits.map((limit) => ({ ...limit, binding: limit.share === largest && limit.share >= 1 }));
}

export function rotorAnswer(outputs: RotorOutputs): Answer {
  const thrust = [words("The rotor makes "), reading(outputs.thrust, "force", "/thrust")];
  const settings = [
    words(" at "),
    reading(outputs.rotationRate, "rotationRate", "/rotationRate"),
    words(" and "),
    reading(outputs.collective, "angle", "/collective"),
    words(" collective"),
  ];
  if (outputs.state === "autorotating")
    return {
      sentence: [
        ...thrust,
        ...settings,
        words(", turned by the air alone, shaft tilted back "),
        reading(outputs.shaftAngle, "angle", "/shaftAngle"),
        words("."),
      ],
      brief: `${outputs.thrust.toFixed(0)} N, autorotating`,
    };
  return {
    sentence: [...thrust, ...settings, words(" for "), reading(outputs.power, "power", "/power"), words(" at the shaft.")],
    brief: `${outputs.thrust.toFixed(0)} N for ${outputs.power.toFixed(0)} W`,
  };
}
