import { describe, expect, it } from "vitest";
import type { FullTrimmed } from "../equilibrium/index.ts";
import { speedProfile } from "./speed-profile.ts";
import { calmPace, paced, suffices } from "./transition-pace.ts";

/** A trim as far as its pace counts: tip speed [m/s], torque [N m], pitch [rad], one control. */
const trim = (tipSpeed: number, torque: number, pitch = 0, control = 0, mode = "clutch-closed"): FullTrimmed =>
  ({
    point: { mode },
    evaluation: {
      rotorStates: Float64Array.of(tipSpeed, 0, 0, 0, 0),
      controls: Float64Array.of(control),
      pitch,
      roll: 0,
      loads: { rotors: [{ torque }] },
    },
  }) as unknown as FullTrimmed;

const aircraft = { rotors: [{ radius: 1, polarInertia: 0.5, hoverTorque: 20 }], controls: [{ rate: 1 }] };
const planned = speedProfile(0, 20, 2, 1);
const same = planned.map(() => trim(80, 10));

describe("the pace of a change of speed", () => {
  it("is that of the plan where nothing has to follow", () => {
    const pace = calmPace(planned, same, aircraft, 1);
    expect(pace.every((factor) => factor === 1)).toBe(true);
    expect(paced(planned, pace)).toEqual(planned);
  });

  it("lets a free rotor slow down with a twentieth of the hover's torque", () => {
    // By hand: 0.5 kg m² · 10 rad/s within 1 N m takes 5 s.
    const trims = planned.map((_, i) => trim(i < 5 ? 80 : 70, 0, 0, 0, "clutch-open"));
    const step = (planned[5]?.time ?? 0) - (planned[4]?.time ?? 0);
    const pace = calmPace(planned, trims, aircraft, 1);
    expect(Math.max(...pace)).toBeCloseTo(5 / step, 9);
  });

  it("slows a driven rotor with two fifths of what the air takes, and speeds it up with three twentieths of the hover's torque", () => {
    const step = (planned[5]?.time ?? 0) - (planned[4]?.time ?? 0);
    const slower = planned.map((_, i) => trim(i < 5 ? 80 : 60, 10));
    // By hand: 0.5 · 20 within 4 N m takes 2.5 s; the other way within 3 N m 3.33 s.
    expect(Math.max(...calmPace(planned, slower, aircraft, 1))).toBeCloseTo(2.5 / step, 9);
    expect(Math.max(...calmPace(planned, slower, aircraft, -1))).toBeCloseTo(10 / 3 / step, 9);
  });

  it("waits for attitude and controls, and the acceleration falls as the time grows", () => {
    const trims = planned.map((_, i) => trim(80, 10, i < 5 ? 0 : 0.3, i < 5 ? 0 : 1.2));
    const pace = calmPace(planned, trims, aircraft, 1);
    const step = (planned[5]?.time ?? 0) - (planned[4]?.time ?? 0);
    // By hand: 0.3 rad at 0.1 rad/s takes 3 s, 1.2 rad at 0.3 of 1 rad/s 4 s.
    expect(Math.max(...pace)).toBeCloseTo(4 / step, 9);
    const moments = paced(planned, pace);
    expect(moments.at(-1)?.airspeed).toBe(20);
    expect(moments.at(-1)?.time).toBeGreaterThan(planned.at(-1)?.time ?? 0);
    expect((moments[5]?.acceleration ?? 9) / (planned[5]?.acceleration ?? 1)).toBeCloseTo(step / 4, 9);
    expect(suffices(pace, pace)).toBe(true);
    expect(
      suffices(
        planned.slice(1).map(() => 1),
        pace,
      ),
    ).toBe(false);
  });
});
