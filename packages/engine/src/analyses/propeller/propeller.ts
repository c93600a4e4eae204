import { type Air, atmosphereAt } from "../../environment/atmosphere/index.ts";
import { domainOfRows } from "../../published/index.ts";
import type { Analysis, Context, Outcome, ProjectView } from "../contract.ts";
import { isProblem } from "../inputs/flight-conditions.ts";
import { propellerAnswer, propellerLimits } from "./answer.ts";
import { propellerCurve } from "./curve.ts";
import { coordinatesOf, propellerFigures } from "./figures.ts";
import { propellerNeeds, propellerReading } from "./input.ts";
import { type PropellerOutputs, propellerOutputs } from "./output-schema.ts";
import { type FoundPoint, propellerRowOf } from "./rows.ts";
import { type PropellerInputs, propellerInputs } from "./schema.ts";
import { propellerWarnings } from "./warnings.ts";

/** What does this propeller do, from rest to windmilling? */
export const propeller: Analysis<PropellerInputs, PropellerOutputs> = {
  name: "propeller",
  question: "What does this propeller do, from rest to windmilling?",
  inputs: propellerInputs,
  outputs: propellerOutputs,
  quick: true,
  method: {
    summary:
      "Blade elements with momentum balanced ring by ring, wake rotation, Prandtl's tip loss and stall delayed by rotation, over all flow states and oblique streams; or measured coefficients interpolated; or the momentum law of an aircraft file.",
    sources: ["leishman-2006", "snel-1993", "sheldahl-klimas-1981", "brandt-selig-2011", "deters-ananda-selig-2014"],
    checks: ["aiaa-2011-1255", "aiaa-2014-2151", "ijae-2018-2560370"],
  },
  example: {
    propeller: {
      diameter: "0.30 m",
      blades: 2,
      pitch: "0.15 m",
      chordFraction: 0.17,
      rootCutout: 0.15,
      section: { kind: "cambered", thickness: 0.09, camber: 0.04 },
      rotationRateLimit: "9000 rpm",
    },
    altitude: "0 m",
    points: [
      { rotationRate: "6000 rpm" },
      { rotationRate: "6000 rpm", airspeed: "8 m/s" },
      { rotationRate: "6000 rpm", airspeed: "12 m/s" },
      { thrust: "4 N", airspeed: "12 m/s" },
      { rotationRate: "6000 rpm", airspeed: "8 m/s", inflowAngle: "80 deg" },
      { state: "freeWheeling", airspeed: "15 m/s" },
      { state: "stopped", airspeed: "15 m/s" },
      { state: "folded", airspeed: "15 m/s" },
    ],
  },
  needs: (inputs) => propellerNeeds(inputs.propeller),
  run,
  figures: (outputs) => propellerFigures(outputs),
  answer: (outputs) => propellerAnswer(outputs),
  limits: (outputs, inputs) => propellerLimits(outputs, inputs),
};

type Assumed = NonNullable<Outcome<unknown>["assumed"]>;

function run(project: ProjectView, inputs: PropellerInputs, context: Context<PropellerOutputs>): Outcome<PropellerOutputs> {
  const { air, assumed: assumedAir } = airOf(inputs);
  const reading = propellerReading(project, inputs);
  if (isProblem(reading)) return { problem: reading };
  const points = inputs.points.map((point, index) => {
    if (index % 50 === 0) context.progress(index, inputs.points.length, "points");
    return propellerRowOf(reading, air, point);
  });
  const rows = points.map(({ row }) => row);
  const [first] = points.filter(({ loads, condition }) => loads !== undefined && condition.rotationRate !== 0);
  const computed = rows.filter((row) => row.state !== "none");
  // What was measured on other propellers says nothing about a table or a law that somebody gives.
  const domain = domainOfRows("propeller", reading.source.kind === "blades" ? computed.map(coordinatesOf) : []);
  const outputs: PropellerOutputs = {
    rows,
    ...propellerCurve(reading.source, first?.condition),
    spanwise: spanwiseOf(first, reading.source.diameter),
    domain,
  };
  const assumed = [...assumedAir, ...reading.assumed];
  return { outputs, warnings: propellerWarnings(rows, domain, reading), ...(assumed.length > 0 ? { assumed } : {}) };
}

function airOf(inputs: PropellerInputs): { readonly air: Air; readonly assumed: Assumed } {
  const standard = atmosphereAt({ altitude: inputs.altitude ?? 0, temperatureOffset: 0, relativeHumidity: 0 });
  if (!inputs.air) {
    const because = "no air was given: mean sea level, standard day";
    return { air: standard, assumed: inputs.altitude === undefined ? [{ path: "inputs.altitude", value: 0, because }] : [] };
  }
  const { density, speedOfSound, dynamicViscosity } = inputs.air;
  const because = "not given: standard day at mean sea level";
  const assumed = [
    ...(speedOfSound === undefined ? [{ path: "inputs.air.speedOfSound", value: standard.speedOfSound, because }] : []),
    ...(dynamicViscosity === undefined ? [{ path: "inputs.air.dynamicViscosity", value: standard.dynamicViscosity, because }] : []),
  ];
  const air = {
    density,
    speedOfSound: speedOfSound ?? standard.speedOfSound,
    dynamicViscosity: dynamicViscosity ?? standard.dynamicViscosity,
  };
  return { air, assumed };
}

function spanwiseOf(point: FoundPoint | undefined, diameter: number): PropellerOutputs["spanwise"] {
  const rings = point?.loads?.rings ?? [];
  const turns = Math.abs(point?.condition.rotationRate ?? 1) / (2 * Math.PI);
  const force = (point?.condition.air.density ?? 1) * turns ** 2 * diameter ** 4;
  const sense = Math.sign(point?.condition.rotationRate ?? 1);
  return {
    radiusFraction: rings.map((ring) => ring.radiusFraction),
    thrust: rings.map((ring) => ring.thrust / (force * ring.width)),
    torque: rings.map((ring) => (sense * 2 * Math.PI * ring.torque) / (force * diameter * ring.width)),
    angleOfAttack: rings.map((ring) => ring.angleOfAttack),
    reynoldsNumber: rings.map((ring) => ring.reynolds),
    inducedVelocity: rings.map((ring) => ring.inducedVelocity),
    swirlVelocity: rings.map((ring) => ring.swirlVelocity),
  };
}
