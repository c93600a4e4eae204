import fc from "fast-check";

const from = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const power = from(0, 3000).map((value) => ({ power: value }));
const current = from(0, 60).map((value) => ({ current: value }));
const drawn = fc.oneof(power, current);

const cellRows = fc
  .tuple(fc.uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 2, maxLength: 6 }), from(0.001, 0.3), fc.boolean(), fc.boolean())
  .map(([places, resistance, paired, overTemperature]) =>
    (overTemperature ? [260, 300] : [undefined]).flatMap((temperature) =>
      places.map((place) => ({
        stateOfCharge: place / 20,
        ...(temperature === undefined ? {} : { temperature }),
        openCircuitVoltage: 3 + place / 20,
        ohmicResistance: resistance,
        ...(paired ? { fastResistance: resistance / 2, fastTimeConstant: 3, slowResistance: resistance, slowTimeConstant: 60 } : {}),
      })),
    ),
  );

/** What is mostly meant by the inputs of a battery. */
export const preferredBattery: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  cell: fc.oneof(
    fc.constantFrom("reference-nca", "demo", { aircraft: "aircraft/baseline.yaml" }),
    cellRows.map((table) => ({ table, diffusionTime: 50 })),
  ),
  capacity: from(2000, 20_000),
  blocks: fc.integer({ min: 3, max: 13 }),
  series: fc.integer({ min: 1, max: 20 }),
  isolatedBlocks: fc.uniqueArray(fc.integer({ min: 1, max: 3 }), { maxLength: 2 }),
  differingBlocks: fc
    .uniqueArray(fc.integer({ min: 1, max: 3 }), { maxLength: 2 })
    .map((blocks) =>
      blocks.map((block, index) => ({ block, startStateOfCharge: 0.9 - 0.3 * index, age: { capacityFactor: 0.8, resistanceFactor: 2 } })),
    ),
  startTemperature: from(233, 330),
  ambientTemperature: from(233, 330),
  "cooling.thermalResistance": from(0.5, 30),
  startStateOfCharge: from(0.1, 1),
  wiringResistance: from(0, 0.05),
  isolatorResistance: from(0, 0.05),
  limits: fc.constantFrom(
    undefined,
    {},
    { continuousCurrent: 5, shortTimeCurrent: 9, shortTime: 10, lowestStateOfCharge: 0.2 },
    { cutoffVoltage: 3.2 },
  ),
  load: fc.oneof(
    { arbitrary: drawn, weight: 40 },
    { arbitrary: fc.tuple(drawn, from(1, 5000)).map(([load, duration]) => ({ ...load, duration })), weight: 40 },
    {
      arbitrary: fc
        .tuple(fc.array(fc.tuple(drawn, from(1, 500)), { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 50 }))
        .map(([steps, repeats]) => ({ steps: steps.map(([load, duration]) => ({ ...load, duration })), repeats })),
      weight: 40,
    },
    {
      arbitrary: fc
        .array(drawn, { minLength: 2, maxLength: 5 })
        .map((rows) => ({ points: rows.map((row, index) => ({ time: 60 * index, ...row })) })),
      weight: 40,
    },
    { arbitrary: fc.constant({ mission: { mission: "missions/slow.yaml", step: 30 } }), weight: 1 },
  ),
  timeStep: from(1, 60),
  rowInterval: from(1, 120),
};
