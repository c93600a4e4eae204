import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ElectricalNetwork } from "./electrical-network.ts";
import { emergencyPower, networkPower, terminalPower } from "./network-power.ts";

const load = (id: string, bus: string, power: number, more: Partial<ElectricalNetwork["loads"][number]> = {}) => ({
  id,
  bus,
  power,
  when: "always" as const,
  emergency: false,
  ...more,
});

/** A pack, a rail of 12 V behind a converter, one of 5 V behind another. */
const network: ElectricalNetwork = {
  buses: [
    { id: "pack", voltage: 50 },
    { id: "rail", voltage: 12 },
    { id: "logic", voltage: 5 },
  ],
  converters: [
    { id: "large", from: "pack", to: "rail", constantLoss: 2, proportionalLoss: 0.1 },
    { id: "small", from: "rail", to: "logic", constantLoss: 0.5, proportionalLoss: 0.2 },
  ],
  loads: [
    load("heater", "pack", 30),
    load("link", "rail", 4, { emergency: true }),
    load("lights", "rail", 3, { when: "lights", emergency: true }),
    load("servos", "rail", 16, { when: "manoeuvre", emergency: true }),
    load("computer", "logic", 5, { emergency: true }),
  ],
  payloadBus: "rail",
  emergency: { bus: "rail", energy: 26_000, resistance: 0.06, capacityFactorCold: 0.65, switchoverTime: 0 },
};
const calm = { lightsOn: false, manoeuvring: false, payloadPower: 0 };

describe("power at the terminals", () => {
  it("pays every converter on the way", () => {
    // Logic 5 W costs 5 × 1.2 + 0.5 = 6.5 W at the rail; with the link 10.5 W, 11.55 + 2 W at the pack; the heater beside it.
    expect(terminalPower(network, calm)).toBeCloseTo(30 + 10.5 * 1.1 + 2, 12);
  });

  it("grows with lights, payload and servos at work by their power and their share of loss", () => {
    const base = terminalPower(network, calm);
    expect(terminalPower(network, { ...calm, lightsOn: true }) - base).toBeCloseTo(3.3, 12);
    expect(terminalPower(network, { ...calm, payloadPower: 18 }) - base).toBeCloseTo(19.8, 12);
    expect(terminalPower(network, { ...calm, manoeuvring: true }) - base).toBeCloseTo(17.6, 12);
  });

  it("is the sum of what consumers cost there", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 200, noNaN: true }), fc.boolean(), fc.boolean(), (payloadPower, lightsOn, manoeuvring) => {
        const { atTerminals, consumers } = networkPower(network, { payloadPower, lightsOn, manoeuvring });
        expect(consumers.reduce((sum, one) => sum + one.atTerminals, 0)).toBeCloseTo(atTerminals, 9);
      }),
    );
    const computer = networkPower(network, calm).consumers.find(({ id }) => id === "computer");
    expect(computer?.atTerminals).toBeCloseTo(5 * 1.2 * 1.1, 12);
  });
});

describe("power of the emergency battery", () => {
  it("is what it feeds on its own rail, converters on from there included, the one from the pack not", () => {
    expect(emergencyPower(network, calm)).toBeCloseTo(4 + 5 * 1.2 + 0.5, 12);
    expect(emergencyPower(network, { lightsOn: true, manoeuvring: true })).toBeCloseTo(4 + 3 + 16 + 6.5, 12);
  });

  it("is not there without a battery", () => {
    const { emergency: _, ...bare } = network;
    expect(emergencyPower(bare, calm)).toBeUndefined();
  });
});
