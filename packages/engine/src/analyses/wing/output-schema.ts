import { z } from "zod";
import { domainOutputs } from "../../published/index.ts";
import { quantity } from "../../quantities/index.ts";

const one = (description: string) => quantity("dimensionless", { description });
const angle = (description: string) => quantity("angle", { description });
const speed = (description: string) => quantity("speed", { description });

export const wingRowOutputs = z.strictObject({
  angle: angle("Angle of attack of the line from which incidence is measured."),
  liftCoefficient: one("Lift over dynamic pressure and area."),
  dragCoefficient: one("Drag likewise: induced, profile and parasite drag together."),
  inducedDragCoefficient: one("Part that comes with lift along the span."),
  profileDragCoefficient: one("Part of the sections, or of the polar without lift."),
  parasiteDragCoefficient: one("Part of everything but the wing."),
  momentCoefficient: one("Pitching moment about the quarter chord of the mean aerodynamic chord, on that chord, nose up positive."),
  rollingMomentCoefficient: one("On area and span, right wing down positive."),
  yawingMomentCoefficient: one("On area and span, nose right positive."),
  liftToDrag: one("Lift over drag."),
  spanEfficiency: one("C_L²/(π A C_Di); none without lift or beyond stall.").nullable(),
  reynoldsNumber: one("On the mean chord."),
  way: z.enum(["polar", "lifting-line", "strips"]).meta({
    description: "How the row was made: strips where a part of the wing has stalled.",
  }),
});

export type WingRow = z.infer<typeof wingRowOutputs>;

const station = z.strictObject({
  place: one("Share of the half span, right positive."),
  liftCoefficient: one("Of the section there."),
  loading: one("Local chord times lift coefficient over mean chord."),
  effectiveAngle: angle("That the section sees."),
  downwash: angle("Downwash angle."),
});

const glideRow = z.strictObject({
  airspeed: speed("Along the glide."),
  sinkRate: speed("Straight down."),
  liftToDrag: one("Distance over height."),
  angle: angle("Angle of attack."),
  liftCoefficient: one("Lift coefficient."),
  power: quantity("power", { description: "Weight times sink rate: thrust power that level flight takes." }),
});

const noMass = "none without mass";

export const wingOutputs = z.strictObject({
  rows: z.array(wingRowOutputs).meta({ description: "In the order of the angles asked for." }),
  aspectRatio: one("Span squared over area."),
  meanAerodynamicChord: quantity("length", { description: "Chord for moments." }),
  liftSlope: one("Slope of lift without lift, per radian.").nullable(),
  zeroLiftAngle: angle("Angle of attack without lift; none within 30 degrees of it.").nullable(),
  zeroLiftDrag: one("Drag coefficient there, parasite drag included.").nullable(),
  largestLift: one("Lift coefficient at the first stall.").nullable(),
  stallAngle: angle("Angle of that; none where lift does not fall.").nullable(),
  bestGlideRatio: one("Largest lift over drag up to stall.").nullable(),
  bestGlideAngle: angle("Of the path below the horizon at that.").nullable(),
  bestGlideAngleOfAttack: angle("Angle of attack at that.").nullable(),
  bestGlideLift: one("Lift coefficient at that.").nullable(),
  bestPowerFactor: one("Largest C_L^1.5/C_D up to stall: least power, least sink, longest flight of a propeller aeroplane.").nullable(),
  bestPowerFactorLift: one("Lift coefficient at that.").nullable(),
  bestGlideSpeed: speed(`Airspeed of the best glide; ${noMass}.`).nullable(),
  minimumSink: speed(`Least rate of sink; ${noMass}.`).nullable(),
  minimumSinkSpeed: speed(`Airspeed of that; ${noMass}.`).nullable(),
  stallSpeed: speed(`Slowest level flight; ${noMass}.`).nullable(),
  spanEfficiency: one("At the best glide.").nullable(),
  fitted: z
    .strictObject({
      zeroLiftDrag: one("Drag coefficient without lift."),
      oswaldEfficiency: one("Oswald efficiency."),
      lowestLift: one("Lift coefficient from which it was fitted."),
      highestLift: one("Lift coefficient up to which it was fitted."),
    })
    .nullable()
    .meta({ description: "Parabola through the drag between a tenth and three quarters of the largest lift." }),
  loading: z
    .array(
      z.strictObject({
        at: z.enum(["best glide", "stall"]).meta({ description: "Which angle." }),
        angle: angle("Angle of attack."),
        stations: z.array(station).meta({ description: "From the right tip to the left." }),
      }),
    )
    .meta({ description: "Along the span; empty for a parabolic polar." }),
  glide: z.array(glideRow).meta({ description: `Glides up to stall, slowest last; ${noMass}.` }),
  domain: domainOutputs,
});

export type WingOutputs = z.infer<typeof wingOutputs>;
