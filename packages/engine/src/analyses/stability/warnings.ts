import type { Warning } from "../contract.ts";
import { fullTrimWarnings } from "../inputs/full-flight.ts";
import type { StabilityOutputs } from "./output-schema.ts";
import type { StabilityInputs } from "./schema.ts";

/** Angles of a disturbance above this are no small motion [rad]. */
const small = 0.17;
/** Roots that move more than this with the width of differences are said to [1]. */
const tolerable = 0.05;

export function stabilityWarnings(outputs: StabilityOutputs, { derivatives, disturbance }: StabilityInputs): readonly Warning[] {
  if (!derivatives) return [...fullTrimWarnings, ...aircraftWarnings(outputs)];
  const angle = Math.atan2(Math.max(Math.abs(disturbance.vertical), Math.abs(disturbance.side)), derivatives.airspeed);
  if (angle <= small) return [];
  const message = "The disturbance turns the stream by more than ten degrees: the linear response says little beyond its sign.";
  return [{ grade: "care", kind: "large-disturbance", message }];
}

function aircraftWarnings({ conditions }: StabilityOutputs): readonly Warning[] {
  const rough = conditions.filter(({ spread }) => (spread ?? 0) > tolerable);
  const speeds = rough.map(({ airspeed, mode }) => `${airspeed.toFixed(0)} m/s ${mode ?? ""}`.trim()).join(", ");
  const bent: readonly Warning[] =
    rough.length === 0
      ? []
      : [
          {
            grade: "care",
            kind: "bent-derivatives",
            message: `Roots move by more than 5 % with the width of the differences at ${speeds}: the loads bend there, and a linear motion is a rough picture.`,
          },
        ];
  return [
    ...bent,
    {
      grade: "note",
      kind: "fixed-controls",
      message:
        "Modes are those of fixed controls with the rotor governor at work; flapping follows at once, inflow lags by the apparent mass of the disc (from memory), and tail and wing feel the rotor's wake without delay.",
    },
    {
      grade: "note",
      kind: "reference-controller",
      message:
        "Manoeuvres are flown by a reference controller (attitude 3 rad/s with integral, heading 1 rad/s, damping 0.8, 200 Hz, no delay; common practice), not by the aircraft's own.",
    },
  ];
}
