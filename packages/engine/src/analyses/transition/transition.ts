import { fullObjective } from "../../equilibrium/index.ts";
import { fullSpeedLine, type LineHooks, type PoweredMode } from "../../performance/index.ts";
import { type Analysis, Cancelled, type Context, type Outcome, type Problem, type ProjectView, type Warning } from "../contract.ts";
import { aircraftNeeds, isProblem } from "../inputs/flight-conditions.ts";
import { type FullFlight, fullFlight, fullTrimMethod, fullTrimWarnings } from "../inputs/full-flight.ts";
import { transitionAnswer, transitionLimits } from "./answer.ts";
import { corridorRows, holdable } from "./corridor.ts";
import { transitionFigures } from "./figures.ts";
import { type Meeting, meeting } from "./meeting.ts";
import { type CorridorRow, type TransitionOutputs, transitionOutputs, type WayOutputs } from "./output-schema.ts";
import { referenceTrimmer } from "./reference-trimmer.ts";
import { type TransitionInputs, transitionInputs } from "./schema.ts";
import { bothWays, flownWay, noWay, plannedWay, planOf } from "./ways.ts";

function run(project: ProjectView, inputs: TransitionInputs, context: Context<TransitionOutputs>): Outcome<TransitionOutputs> {
  const flight = fullFlight(project, { ...inputs, losses: "component" });
  if (isProblem(flight)) return { problem: flight };
  const wrong = noClutch(flight) ?? contradiction(inputs);
  if (wrong) return { problem: wrong };
  const trimmer = flight.trimmer(inputs.controls);
  const speeds = [...new Set(inputs.speeds)].sort((a, b) => a - b);
  const progress = stages(context);
  const line = (mode: PoweredMode) => fullSpeedLine(trimmer, mode, speeds, progress(`level flight, ${words(mode)}`));
  const lines = { closed: line("clutch-closed"), open: line("clutch-open") };
  const reference = referenceTrimmer(flight, inputs.controls);
  const ends = meeting(reference, lines, inputs);
  const hooks = progress("planning");
  const plans = bothWays.map((way) => {
    hooks.cancelled();
    return planOf(reference, way, ends, inputs);
  });
  const planned = bothWays.map((way, i) => {
    const plan = plans[i];
    return typeof plan === "object" ? plannedWay(flight, reference, plan, inputs, "not flown yet") : noWay(way, plan ?? "not planned");
  });
  context.partial(
    outputsOf(flight, ends, planned, []),
    "trims along the reference without the motion between them; corridor not looked for",
  );
  const corridor = corridorRows(trimmer, lines, progress("rotor speeds of level flight"));
  const flying = progress("flying");
  const ways = bothWays.map((way, i) => {
    flying.progress(i, bothWays.length);
    flying.cancelled();
    const plan = plans[i];
    return typeof plan === "object" ? flownWay(flight, reference, plan, inputs, flying.cancelled) : noWay(way, plan ?? "not planned");
  });
  const outputs = outputsOf(flight, ends, ways, corridor);
  return { outputs, assumed: flight.assumed, warnings: warningsOf(outputs, inputs) };
}

const words = (mode: PoweredMode) => (mode === "clutch-open" ? "clutch open" : "clutch closed");

/** Stages of about equal length, one after the other. */
function stages({ progress, cancelled }: Context<TransitionOutputs>): (doing: string) => LineHooks {
  const count = 5;
  let stage = -1;
  return (doing) => {
    stage += 1;
    const base = stage;
    return {
      progress: (done, total) => progress(base + done / Math.max(total, 1), count, doing),
      cancelled: () => {
        if (cancelled()) throw new Cancelled();
      },
    };
  };
}

function noClutch({ definition }: FullFlight): Problem | undefined {
  const rotors = new Set(definition.rotors.map(({ id }) => id));
  if (definition.driveLines.some(({ drives, clutch }) => clutch === "one-way" && rotors.has(drives))) return undefined;
  return {
    kind: "no-clutch",
    message:
      "No rotor of this aircraft is driven over a one-way clutch: it has one mode of flight and nothing to pass between. Ask speed instead.",
  };
}

function contradiction({ cruiseSpeed, clutchSpeed }: TransitionInputs): Problem | undefined {
  if (cruiseSpeed === undefined || clutchSpeed === undefined || clutchSpeed <= cruiseSpeed) return undefined;
  return {
    kind: "contradicting-inputs",
    message: `clutchSpeed (${clutchSpeed} m/s) is above cruiseSpeed (${cruiseSpeed} m/s): the clutch opens on the way to the cruise.`,
    inputs: ["clutchSpeed", "cruiseSpeed"],
  };
}

function outputsOf(
  { definition, takeoffMass }: FullFlight,
  { hover, cruise, ...place }: Meeting,
  ways: readonly WayOutputs[],
  corridor: CorridorRow[],
): TransitionOutputs {
  const rotor = definition.rotors[0];
  const hovering = hover?.evaluation.loads.rotors[0];
  const rate = (hover?.evaluation.rotorStates[0] ?? 0) / (rotor?.radius ?? 1);
  const cruiseSpeed = cruise?.point.airspeed ?? null;
  return {
    takeoffMass,
    hoverPower: hover ? fullObjective(hover) : null,
    hoverShaftPower: hovering ? hovering.torque * rate : null,
    cruiseSpeed,
    cruisePower: cruise ? fullObjective(cruise) : null,
    meetSpeed: place.meetSpeed ?? null,
    meetBecause: place.because ?? null,
    closedPower: place.closedPower ?? null,
    openPower: place.openPower ?? null,
    propellers: definition.propellers.map(({ id }) => id),
    driveLines: definition.driveLines.map(({ id }) => id),
    tipSpeedMinimum: rotor?.tipSpeedMinimum ?? 0,
    tipSpeedMaximum: rotor?.tipSpeedMaximum ?? 0,
    ways: [...ways],
    corridor,
    holdable: holdable(corridor, cruiseSpeed),
  };
}

/** Less acceleration than asked for that is not worth a word [1]. */
const slightly = 0.03;

function warningsOf({ ways }: TransitionOutputs, inputs: TransitionInputs): Warning[] {
  const gentle = ways.flatMap(({ way, summary }) =>
    summary && summary.largestAcceleration < inputs.acceleration * (1 - slightly)
      ? [`${way}: ${summary.largestAcceleration.toFixed(2)} m/s²`]
      : [],
  );
  const own: Warning[] = [
    {
      kind: "calm-air",
      grade: "note",
      message:
        "Flown in still air far from the ground, with exact sensors and no delay: a gust, ground effect and an autopilot's delay are not in it.",
    },
    {
      kind: "reference-controller",
      grade: "note",
      message:
        "The path is followed by the house's own controller of least squares; another autopilot needs other control movements and peaks. The spinning-up of the motor before the clutch closes is not counted.",
    },
    {
      kind: "stall-in-motion",
      grade: "note",
      message:
        "The stall margin is that of the trims that the reference passes through; what the motion adds to the rotor's thrust is not searched for a margin.",
    },
  ];
  if (gentle.length > 0)
    own.push({
      kind: "gentler",
      grade: "care",
      message: `The acceleration asked for does not trim, or rotor, attitude and controls cannot follow it calmly; it is flown with less (${gentle.join(", ")}).`,
    });
  return [...own, ...fullTrimWarnings];
}

/** From hover to cruise and back: histories of both ways, what they use of every limit, and the corridor in which the modes meet. */
export const transition: Analysis<TransitionInputs, TransitionOutputs> = {
  name: "transition",
  question: "How does it get from hover to cruise and back?",
  inputs: transitionInputs,
  outputs: transitionOutputs,
  method: {
    ...fullTrimMethod,
    summary:
      "Level reference through six-component trims with their acceleration, 2 % inside the permitted rotor speeds and 5 % inside the flapping range: clutch closed up to the speed where the modes meet, there the rotor's speed and torque handed over, clutch open to cruise; and back. " +
      "Flown in six degrees of freedom with rotor speed, lag of the inflow, flapping at once, governor, one-way clutch and the rates of all actuators, " +
      "by a path-following controller of least squares scheduled along the trims; the speed changes no faster than rotor, attitude and controls can follow calmly; winding heat by one node, cells by resistance. " +
      `Trims: ${fullTrimMethod.summary}`,
    sources: [...fullTrimMethod.sources, "etkin-reid-1996", "hairer-norsett-wanner-1993", "anderson-1978"],
  },
  example: {},
  needs: aircraftNeeds,
  run,
  figures: transitionFigures,
  answer: transitionAnswer,
  limits: transitionLimits,
};
