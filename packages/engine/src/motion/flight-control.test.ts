import { describe, expect, it } from "vitest";
import { Actuators } from "./actuators.ts";
import { eulerAngles, writeQuaternion, writeRotation } from "./attitude.ts";
import type { FlightSample } from "./flight-simulation.ts";
import { addedWinds, discreteGust, sharpGust } from "./gusts.ts";
import type { Linearisation } from "./linearisation.ts";
import { extremesOf, goalOf, outsideBand, pitchExcursion, recoveryTime } from "./manoeuvres.ts";
import { MultistepIntegrator } from "./multistep.ts";
import { ReferenceController } from "./reference-controller.ts";
import { driveTorque, type RotorDrive } from "./rotor-drive.ts";

const level = { roll: 0, pitch: 0, yaw: 0 };

describe("attitude", () => {
  it("comes back from its quaternion, and turns body axes as three turns do", () => {
    for (const attitude of [level, { roll: 0.4, pitch: -1.2, yaw: 2.5 }, { roll: -3, pitch: 0.2, yaw: -0.1 }]) {
      const state = new Float64Array(4);
      writeQuaternion(attitude, state, 0);
      const { roll, pitch, yaw } = eulerAngles(state, 0);
      expect([roll, pitch, yaw]).toEqual([attitude.roll, attitude.pitch, attitude.yaw].map((angle) => expect.closeTo(angle, 12)));
      const m = new Float64Array(9);
      writeRotation(state, 0, m);
      // Forward axis: cos θ cos ψ, cos θ sin ψ, −sin θ.
      expect(m[0]).toBeCloseTo(Math.cos(attitude.pitch) * Math.cos(attitude.yaw), 12);
      expect(m[3]).toBeCloseTo(Math.cos(attitude.pitch) * Math.sin(attitude.yaw), 12);
      expect(m[6]).toBeCloseTo(-Math.sin(attitude.pitch), 12);
    }
  });

  it("straight up has a heading and no roll", () => {
    const state = new Float64Array(4);
    writeQuaternion({ roll: 0, pitch: Math.PI / 2, yaw: 0.7 }, state, 0);
    const { roll, pitch, yaw } = eulerAngles(state, 0);
    expect([roll, pitch, yaw]).toEqual([0, Math.PI / 2, expect.closeTo(0.7, 7)]);
  });
});

describe("gusts", () => {
  it("rise to their peak over the gradient distance, by half at half of it, and are gone after twice", () => {
    const gust = discreteGust({ peak: [0, 2, -6], gradientDistance: 20, speed: 10, start: 1 });
    const at = (time: number) => gust(time, 0, 0, 0);
    expect(at(1)).toEqual([0, 0, 0]);
    expect(at(2)[2]).toBeCloseTo(-3, 12);
    expect(at(3)).toEqual([0, 2, -6]);
    expect(at(5)).toEqual([0, 0, 0]);
    expect(addedWinds(gust, sharpGust([1, 0, 0], 2))(3, 0, 0, 0)).toEqual([1, 2, -6]);
    expect(() => discreteGust({ peak: [0, 0, 0], gradientDistance: 0, speed: 10, start: 0 })).toThrow("gradient distance");
  });

  it("and excursions of pitch begin and end without a jump", () => {
    const wanted = pitchExcursion({ roll: 0.1, pitch: 0.2, yaw: 1 }, -0.3, 1, 2);
    expect(wanted(0.5)).toEqual({ roll: 0.1, pitch: 0.2, yaw: 1 });
    expect(wanted(2).pitch).toBeCloseTo(-0.1, 12);
    expect(wanted(1.001).pitch).toBeCloseTo(0.2, 5);
    expect(wanted(2.999).pitch).toBeCloseTo(0.2, 5);
  });
});

describe("actuators", () => {
  const controls = [
    { id: "slow", minimum: -0.1, maximum: 0.2, rate: 1 },
    { id: "quick", minimum: -0.1, maximum: 0.2 },
  ];

  it("move no faster than their rate, no farther than their stops, and count both", () => {
    const actuators = new Actuators(controls, Float64Array.of(0, 0));
    actuators.move(Float64Array.of(0.5, 0.5), 0.05);
    expect([...actuators.positions]).toEqual([0.05, 0.2]);
    for (let k = 0; k < 10; k++) actuators.move(Float64Array.of(0.5, 0.1), 0.05);
    expect(actuators.positions[0]).toBeCloseTo(0.2, 12);
    expect(actuators.positions[1]).toBe(0.1);
    expect([...actuators.atStop]).toEqual([11, 1]);
    expect(actuators.atRate[0]).toBeGreaterThan(2);
    expect(actuators.atRate[1]).toBe(0);
  });

  it("stay where they are jammed, and run to their end when they run away", () => {
    const actuators = new Actuators(controls, Float64Array.of(0, 0.05));
    actuators.fail(0, { kind: "hard-over", toward: "minimum" });
    actuators.fail(1, { kind: "jammed" });
    for (let k = 0; k < 10; k++) actuators.move(Float64Array.of(0.1, 0.1), 0.05);
    expect(actuators.positions[0]).toBeCloseTo(-0.1, 12);
    expect(actuators.positions[1]).toBe(0.05);
  });
});

describe("a governor", () => {
  const drive: RotorDrive = { kind: "governed", rate: 70, timeConstant: 0.6, largestPower: 2000, torque: 15 };

  it("brings a rotor back without overshoot, in its time constant, and finds the torque that is asked", () => {
    const inertia = 0.55;
    const asked = 20;
    const state = Float64Array.of(65, 15);
    const integrator = new MultistepIntegrator(2, (_time, [rate = 0, integral = 0], into) => {
      const { torque, integralRate } = driveTorque(drive, integral, inertia, rate, asked);
      into[0] = (torque - asked) / inertia;
      into[1] = integralRate;
    });
    let highest = 0;
    for (let k = 0; k < 1600; k++) {
      integrator.advance(k * 0.005, state, 0.005);
      highest = Math.max(highest, state[0] as number);
    }
    expect(state[0]).toBeCloseTo(70, 3);
    expect(state[1]).toBeCloseTo(asked, 3);
    expect(highest).toBeLessThan(70.5);
  });

  it("never turns a rotor backward nor gives more than its power, and waits with its integral meanwhile", () => {
    expect(driveTorque(drive, 15, 0.55, 90, 0)).toEqual({ torque: 0, integralRate: 0 });
    const { torque, integralRate } = driveTorque(drive, 30, 0.55, 50, 0);
    expect(torque * 50).toBeCloseTo(2000, 9);
    expect(integralRate).toBe(0);
    expect(driveTorque({ kind: "held" }, 0, 0.55, 50, 12).torque).toBe(12);
  });
});

describe("the reference controller", () => {
  /** Three accelerations by four controls; the fourth moves nothing. */
  const effects = [
    [0, 0, 0, 0],
    [0, 0, 0, 0],
    [0, -30, 0, 0],
    [0, 0, 0, 0],
    [0, 0, 0, 0],
    [60, 0, 5, 0],
    [0, 0, 12, 0],
    [0, 0, 0, 0],
  ];
  const linear: Linearisation = {
    states: [],
    matrix: new Float64Array(0),
    controls: Float64Array.from(effects.flat()),
    controlCount: 4,
    rates: [],
  };
  const controls = ["roll", "pitch", "yaw", "none"].map((id) => ({ id, minimum: -0.3, maximum: 0.3, rate: 1 }));
  const trim = Float64Array.of(0.01, 0.02, 0, 0.1);
  const fresh = (usable = [true, true, true, true]) =>
    new ReferenceController(linear, controls, usable, trim, { attitude: 3, integral: 0, heading: 1, damping: 0.8 });

  it("asks for controls that make the accelerations of its law, and for nothing at rest", () => {
    const controller = fresh();
    controller.act(level, [0, 0, 0], level, 0.005);
    expect([...controller.asked]).toEqual([...trim]);
    controller.act({ roll: 0.1, pitch: -0.2, yaw: 0.3 }, [0.5, 0, -0.1], level, 0.005);
    const change = controller.asked.map((asked, i) => asked - (trim[i] as number));
    const made = [5, 2, 6].map((row) => (effects[row] ?? []).reduce((sum, effect, i) => sum + effect * (change[i] as number), 0));
    const wanted = [-9 * 0.1 - 4.8 * 0.5, 9 * 0.2, -0.3 + 1.6 * 0.1];
    made.forEach((each, i) => {
      expect(each).toBeCloseTo(wanted[i] as number, 9);
    });
    expect(change[3]).toBe(0);
  });

  it("leaves controls alone that it may not use, and turns the short way", () => {
    const controller = fresh([true, true, false, true]);
    controller.act({ ...level, yaw: 1 }, [0, 0, 0], level, 0.005);
    expect(controller.asked[2]).toBe(0);
    const other = fresh();
    other.act({ ...level, yaw: 3 }, [0, 0, 0], { ...level, yaw: -3 }, 0.005);
    expect(other.asked[2]).toBeGreaterThan(0);
  });

  it("takes a lasting error away with its integral, up to twenty degrees of it", () => {
    const controller = new ReferenceController(linear, controls, [true, true, true, true], trim);
    controller.act({ ...level, pitch: 0.1 }, [0, 0, 0], level, 1);
    const first = controller.asked[1] as number;
    for (let k = 0; k < 100; k++) controller.act({ ...level, pitch: 0.1 }, [0, 0, 0], level, 1);
    expect((controller.asked[1] as number) - 0.02).toBeCloseTo((9 * 0.45) / 30, 9);
    expect(first).toBeLessThan(controller.asked[1] as number);
  });
});

describe("recovery", () => {
  const sample = (time: number, pitch: number, rotor: number): FlightSample => ({
    time,
    airspeed: [20, 0, 0],
    place: [0, 0, -time],
    climbRate: 0,
    attitude: { ...level, pitch },
    rates: [0, 0, 0],
    loadFactor: 1,
    rotorRates: [rotor],
    rotorThrusts: [200],
    rotorTorques: [10],
    driveTorques: [10],
    controls: [],
    electricPower: 500,
  });
  const flight = [sample(0, 0, 70), sample(1, 0.2, 65), sample(2, 0, 70), sample(3, 0.1, 70), sample(4, 0.01, 69.9), sample(5, 0, 70)];

  it("counts from when everything is back for good, not from the first time it passes by", () => {
    expect(recoveryTime(flight, 1, goalOf(flight[0] as FlightSample))).toBe(3);
    expect(recoveryTime(flight.slice(0, 4), 1, goalOf(flight[0] as FlightSample))).toBeNull();
    expect(outsideBand(flight[1] as FlightSample, goalOf(flight[0] as FlightSample))).toEqual(["pitch", "rotor speed"]);
    expect(extremesOf(flight, ({ rotorRates: [rate] }) => rate ?? 0)).toMatchObject({ lowest: 65, lowestAt: 1, highest: 70 });
  });
});
