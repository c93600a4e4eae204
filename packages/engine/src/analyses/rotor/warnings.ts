import type { Warning } from "../contract.ts";
import { sectionWarnings } from "../inputs/section-warnings.ts";
import type { RotorReading } from "./model-input.ts";
import type { RotorMeasures } from "./output-schema.ts";
import type { RotorInputs } from "./schema.ts";

/** Below this advance ratio the uneven inflow of hover matters, which a factor this large stands for. */
const hoverAdvanceRatio = 0.05;
const usualHoverFactor = 1.1;
const stallCollectiveSlack = 0.002;

/** Beyond the collective of the largest thrust, by more than the search for it can be wrong. */
export function stalled({ collective, largestThrustCollective }: Pick<RotorMeasures, "collective" | "largestThrustCollective">): boolean {
  return largestThrustCollective !== null && collective > largestThrustCollective + stallCollectiveSlack;
}

/** What to know before using the numbers; of several rows each thing once, with how many rows it is about. */
export function rotorWarnings(rows: readonly RotorMeasures[], inputs: RotorInputs, reading: RotorReading): readonly Warning[] {
  const told = new Map<string, { readonly warning: Warning; count: number }>();
  for (const row of rows) {
    for (const warning of rowWarnings(row, reading)) {
      const before = told.get(warning.kind);
      if (before) before.count += 1;
      else told.set(warning.kind, { warning, count: 1 });
    }
  }
  const ofRows = [...told.values()].map(({ warning, count }) =>
    count === rows.length ? warning : { ...warning, message: `In ${count} of ${rows.length} points: ${warning.message}` },
  );
  return [...reading.warnings, ...ofRows, ...sectionsWarnings(rows, reading), ...rotorNotes(inputs, reading)];
}

function rowWarnings(row: RotorMeasures, { model, flapRange }: RotorReading): readonly Warning[] {
  const warnings: Warning[] = [];
  const care = (kind: string, message: string): void => {
    warnings.push({ grade: "care", kind, message });
  };
  if (row.state === "vortex ring")
    care(
      "vortex-ring",
      "The rotor descends into its own wake (vortex ring): not recommended, and the power is uncertain by 25 %, not for planning.",
    );
  if (row.state === "autorotating" && row.cq !== 0)
    care(
      "roughly-met",
      `Ring by ring the inflow jumps from state to state here: a torque of ${row.torque.toPrecision(2)} N m is left where none was asked for.`,
    );
  if (stalled(row))
    care("stalled", "The collective lies beyond the one of largest steady thrust: the rotor is stalled and the numbers are rough.");
  if (flapRange !== undefined && largestFlap(row) > flapRange)
    care("flap-stop", `The blades flap ${degrees(largestFlap(row))}, past the stop at ${degrees(flapRange)}.`);
  const even = model.inflowBalance !== "annular" && model.inducedPowerFactor < usualHoverFactor;
  const evenInflow = even && row.state === "normal" && row.advanceRatio < hoverAdvanceRatio;
  if (evenInflow)
    warnings.push({
      grade: "note",
      kind: "hover-inflow",
      message:
        "Near hover the inflow is spread evenly over the disc: power comes out low by 5 to 15 % on untwisted blades. Annular inflow computes it ring by ring; an induced power factor of 1.1 to 1.2 is common practice.",
    });
  return warnings;
}

/** Flapping away from the plane normal to the shaft, at its largest around the turn [rad]. */
export function largestFlap({ flapLongitudinal, flapLateral }: Pick<RotorMeasures, "flapLongitudinal" | "flapLateral">): number {
  return Math.hypot(flapLongitudinal, flapLateral);
}

function degrees(angle: number): string {
  return `${((angle * 180) / Math.PI).toFixed(1)}°`;
}

/** What the sections are read at: Reynolds number at three quarters of the radius, Mach number to the advancing tip. */
function sectionsWarnings(rows: readonly RotorMeasures[], { model }: RotorReading): readonly Warning[] {
  const range = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];
  const read = {
    reynoldsNumber: range(rows.map((row) => row.reynoldsNumber)),
    machNumber: range(rows.flatMap((row) => [0.75 * row.tipMach, row.advancingTipMach])),
  };
  const sections = new Set([model.section, ...model.stations.flatMap((station) => (station.section ? [station.section] : []))]);
  const told = [...sections].flatMap((section) => sectionWarnings(section, read));
  return told.filter((warning, index) => told.findIndex((one) => one.message === warning.message) === index);
}

function rotorNotes(inputs: RotorInputs, { model }: RotorReading): readonly Warning[] {
  const notes: Warning[] = [];
  const note = (kind: string, message: string): void => {
    notes.push({ grade: "note", kind, message });
  };
  const { articulation } = model;
  if (articulation.kind === "hinged" && !articulation.restFrequency && model.precone !== 0)
    note("precone", "The precone of hinged blades has no effect: their coning is computed.");
  if (inputs.heightAboveGround !== undefined || inputs.sweep?.heightAboveGround)
    note(
      "ground-effect",
      "The ground's effect is an image's in hover and slow flight, from memory of its source; gusts and walls are not in it.",
    );
  if (inputs.collective === undefined && !inputs.sweep?.collective)
    note("collective", "Collective at a given thrust is good to 1 to 1.5 degrees: short blades make less thrust than computed.");
  return notes;
}
