import { z } from "zod";
import { quantity } from "../../quantities/index.ts";

const word = (description: string) => z.string().describe(description);
const one = (description: string) => quantity("dimensionless", { description });
const angle = (description: string) => quantity("angle", { description });
const force = (description: string) => quantity("force", { description });
const torque = (description: string) => quantity("torque", { description });
const watt = (description: string) => quantity("power", { description });
const speed = (description: string) => quantity("speed", { description });
const metre = (description: string) => quantity("length", { description });
const second = (description: string) => quantity("time", { description });
const joule = (description: string) => quantity("energy", { description });
const kelvin = (description: string) => quantity("temperature", { description });
const family = z.enum(["air", "power", "strength", "control", "rule"]).describe("Kind of the limit.");

const row = z.strictObject({
  time: second("Since the start."),
  phase: z.enum(["hold", "clutch closed", "rotor speed", "hand-over", "clutch open", "settle"]).describe("Part of the transition."),
  clutch: z.enum(["closed", "overrunning", "open"]).describe("Overrunning: the motor turns along and gives nothing."),
  airspeed: speed("Along the course."),
  wantedAirspeed: speed("Of the reference."),
  height: metre("Above the start."),
  distance: metre("Along the course."),
  aside: metre("To the right of the course."),
  pitch: angle("Nose up."),
  roll: angle("Right side down."),
  tipSpeed: speed("Of the rotor."),
  rotorThrust: force("Along the normal of the disc."),
  rotorTorque: torque("That the air asks of the shaft; negative where it speeds the rotor up."),
  driveTorque: torque("That the clutch passes on."),
  rotorPower: watt("That the drive gives to the rotor."),
  collective: angle("Of the rotor; none where nothing sets it.").nullable(),
  thrusts: z.array(force("Of the propeller.")).describe("In the order of the aircraft file."),
  drivePowers: z.array(watt("Drawn by the drive line.")).describe("In the order of the aircraft file."),
  electricPower: watt("Drawn at the pack's terminals."),
  trimmedPower: watt("Of the trims that the reference passes through, with their acceleration."),
  blockCurrent: quantity("current", { description: "Of one block; none where the pack cannot give the power." }).nullable(),
  packVoltage: quantity("voltage", { description: "At the terminals; none where the pack cannot give the power." }).nullable(),
  stateOfCharge: one("Of the pack."),
  windings: z.array(kelvin("Hottest winding of the drive line.")).describe("In the order of the aircraft file."),
});

const use = z.strictObject({
  name: word("Limit."),
  family,
  share: one("Largest share of it that is used; 1 is the limit, 99 where nothing is left of what it limits."),
  side: z.enum(["upper", "lower"]).describe("On which side of it flight is possible."),
  at: second("When."),
  beyond: second("For how long in all it is passed."),
  kept: z
    .boolean()
    .describe("Whether this is permitted: within it, or beyond a continuous rating for no longer than the short-time rating says."),
});

const energy = z.strictObject({
  kinetic: joule("Gained by the aircraft's motion."),
  height: joule("Gained in height."),
  rotors: joule("Gained by the rotors' speed."),
  airframeWork: joule("Work of the air, and of the shafts' reaction, on the airframe."),
  shaftWork: joule("Work of the air on the rotor shafts; negative where it brakes them."),
  driveWork: joule("Work of the drives on the rotor shafts."),
  electricEnergy: joule("Drawn at the pack's terminals."),
  gap: one("What is missing: gained less worked, over the largest of them."),
});

const summary = z.strictObject({
  duration: second("From the beginning of the change of speed to its end."),
  distance: metre("Along the course in that time."),
  heightGained: metre("Highest above the start."),
  heightLost: metre("Lowest below it."),
  peakPower: watt("Largest electric power."),
  peakTime: second("When."),
  peakAirspeed: speed("At what airspeed."),
  peakDuration: second("How long it is above 95 % of the peak, in one stretch around it."),
  steadyPower: watt("Of steady level flight at the start and the end, whichever is more."),
  timeAboveSteady: second("How long it is above both."),
  clutchTime: second("When the clutch opens or begins to be driven."),
  clutchAirspeed: speed("At what airspeed."),
  clutchTorque: torque("That it passes on at that moment."),
  clutchTipSpeed: speed("Tip speed of the rotor then."),
  slowestTipSpeed: speed("Of the rotor on the way."),
  fastestTipSpeed: speed("Of the rotor on the way."),
  largestPitch: angle("Nose up."),
  smallestPitch: angle("Nose up."),
  largestAcceleration: quantity("acceleration", {
    description: "Of the reference: smaller where trims, rotor, attitude or controls ask for it.",
  }),
  endAirspeedError: speed("Airspeed at the end less that of the trim there."),
  endPowerError: watt("Electric power at the end less that of the trim there."),
  stateOfCharge: one("At the end."),
});

const way = z.strictObject({
  way: z.enum(["hover to cruise", "cruise to hover"]).describe("From where to where."),
  flown: z.boolean().describe("Whether the motion was followed to the end."),
  refusal: word("Why there is none, or why it ended early.").nullable(),
  summary: summary.nullable(),
  limits: z.array(use).describe("What is used of each limit on the way, most first."),
  energy: energy.nullable().describe("Balance over the whole history."),
  rows: z.array(row).describe("History; the trims of the reference alone where the motion was not flown."),
});

const end = z.strictObject({ tipSpeed: speed("Tip speed."), limit: word("What ends it there."), family });

const corridorMode = z.strictObject({
  electricPower: watt("Cheapest level flight; none where it does not fly.").nullable(),
  tipSpeed: speed("Of the rotor there.").nullable(),
  shaftPower: watt("Of the rotor there.").nullable(),
  limit: word("Why it does not fly.").nullable(),
  family: family.nullable(),
  slowest: end.nullable().describe("Slowest rotor with which it flies."),
  fastest: end.nullable().describe("Fastest rotor with which it flies."),
});

const corridorRow = z.strictObject({
  airspeed: speed("Airspeed."),
  closed: corridorMode.describe("Clutch closed: rotor torque from 0 up."),
  open: corridorMode.describe("Clutch open: no torque."),
  sharedSlowest: speed("Slowest rotor that both modes share.").nullable(),
  sharedFastest: speed("Fastest rotor that both modes share.").nullable(),
  hold: z.enum(["clutch closed", "clutch open", "not"]).describe("How this speed is held at least power."),
  holdPower: watt("What that takes.").nullable(),
});

export const transitionOutputs = z.strictObject({
  takeoffMass: quantity("mass", { description: "Take-off mass." }),
  hoverPower: watt("Electric power of the hover.").nullable(),
  hoverShaftPower: watt("Of the rotor there.").nullable(),
  cruiseSpeed: speed("Airspeed of the cruise.").nullable(),
  cruisePower: watt("Electric power there, clutch open.").nullable(),
  meetSpeed: speed("Airspeed at which the reference opens and closes the clutch.").nullable(),
  meetBecause: word("Why there.").nullable(),
  closedPower: watt("Electric power there with the clutch closed.").nullable(),
  openPower: watt("And with it open.").nullable(),
  propellers: z.array(word("Id.")).describe("In the order of the thrusts."),
  driveLines: z.array(word("Id.")).describe("In the order of powers and windings."),
  tipSpeedMinimum: speed("Slowest permitted rotor."),
  tipSpeedMaximum: speed("Fastest permitted rotor."),
  ways: z.array(way).describe("Out, then back."),
  corridor: z.array(corridorRow).describe("Rotor speeds of level flight over airspeed, and what holding each airspeed takes."),
  holdable: z
    .strictObject({
      everySpeed: z.boolean().describe("Whether every airspeed of the corridor from hover to cruise can be held."),
      gaps: z.array(speed("Airspeed.")).describe("Those that cannot."),
      sharedFrom: speed("Least airspeed at which both modes share a rotor speed.").nullable(),
      sharedTo: speed("Largest.").nullable(),
    })
    .describe("Holding a speed between hover and cruise."),
});

export type TransitionOutputs = z.infer<typeof transitionOutputs>;
export type WayOutputs = z.infer<typeof way>;
export type HistoryRow = z.infer<typeof row>;
export type LimitUse = z.infer<typeof use>;
export type WaySummary = z.infer<typeof summary>;
export type CorridorRow = z.infer<typeof corridorRow>;
export type CorridorModeOutputs = z.infer<typeof corridorMode>;
