import type { Axis, Figure, ProfilePanel } from "../figures.ts";
import type { StabilityOutputs } from "./output-schema.ts";

const stateAxes: Readonly<Record<string, Axis>> = {
  u: { label: "Speed along", quantity: "speed" },
  w: { label: "Speed down", quantity: "speed" },
  v: { label: "Speed to the right", quantity: "speed" },
  q: { label: "Pitch rate", quantity: "anglePerTime" },
  p: { label: "Roll rate", quantity: "anglePerTime" },
  r: { label: "Yaw rate", quantity: "anglePerTime" },
  theta: { label: "Pitch", quantity: "angle" },
  phi: { label: "Roll", quantity: "angle" },
};

/** States that a reader looks for; the others stand in the outputs. */
function shown(state: string): Axis | undefined {
  if (state.startsWith("rotor-speed")) return { label: "Rotor speed", quantity: "rotationRate" };
  return stateAxes[state];
}

const words: Readonly<Record<string, string>> = { all: "all axes", longitudinal: "longitudinal", lateral: "lateral" };

/** Beyond this angle a linear motion says nothing any more [rad]: the picture ends there. */
const largestAngle = Math.PI / 3;

/** How many samples are worth showing: up to the first that leaves the range of small angles, two at least. */
function samplesShown(states: StabilityOutputs["response"][number]["states"], count: number): number {
  const angles = states.filter(({ state }) => state === "theta" || state === "phi");
  const end = Array.from({ length: count }, (_, k) => k).find((k) => angles.some(({ values }) => Math.abs(values[k] ?? 0) > largestAngle));
  return Math.max(2, end ?? count);
}

/** What a sharp gust does to fixed controls. */
export function responseFigures({ response }: StabilityOutputs): readonly Figure[] {
  return response.map(({ group, times, states }) => {
    const kept = samplesShown(states, times.length);
    const ends = kept < times.length ? ", until it leaves what a linear motion can tell: 60° of pitch or roll" : "";
    return {
      kind: "profile",
      id: `response-${group}`,
      caption: `Linear response to a sharp gust, controls fixed, ${words[group] ?? group}${ends}`,
      x: { label: "Time", quantity: "time", unit: "s" },
      panels: states.flatMap(({ state, values }): ProfilePanel[] => {
        const y = shown(state);
        if (!y) return [];
        const meaning = state.startsWith("rotor") ? "rotor" : "wing";
        return [{ y, series: [{ name: y.label.toLowerCase(), meaning, x: times.slice(0, kept), y: values.slice(0, kept) }] }];
      }),
    };
  });
}
