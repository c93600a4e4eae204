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

/** What a sharp gust does to fixed controls. */
export function responseFigures({ response }: StabilityOutputs): readonly Figure[] {
  return response.map(({ group, times, states }) => ({
    kind: "profile",
    id: `response-${group}`,
    caption: `Linear response to a sharp gust, controls fixed, ${words[group] ?? group}`,
    x: { label: "Time", quantity: "time", unit: "s" },
    panels: states.flatMap(({ state, values }): ProfilePanel[] => {
      const y = shown(state);
      return y ? [{ y, series: [{ name: state, meaning: state.startsWith("rotor") ? "rotor" : "wing", x: times, y: values }] }] : [];
    }),
  }));
}
