import { z } from "zod";
import { quantity } from "../../quantities/index.ts";

/** A derivative as a plain number: units differ from one to the next, so each description says its own (SI). */
function derivative(description: string) {
  return z.number().min(-1e5).max(1e5).meta({ description });
}

function optionalDerivative(description: string) {
  return derivative(`${description} None is 0.`).default(0);
}

const one = (description: string) => quantity("dimensionless", { description, minimum: -1e4, maximum: 1e4 });
const oneOrZero = (description: string) => one(`${description} None is 0.`).default(0);

const flight = {
  airspeed: quantity("speed", { description: "Steady true airspeed.", minimum: 0.1, maximum: 1000 }),
  pathAngle: quantity("angle", { description: "Climb angle of the steady flight.", minimum: -1.4, maximum: 1.4 }).default(0),
  gravity: quantity("acceleration", { description: "Acceleration of gravity.", minimum: 0.1, maximum: 100 }).default(9.80665),
};

/** One derivative varied, by the names of this kind. */
function varied(names: readonly [string, ...string[]]) {
  return z
    .strictObject({
      derivative: z.enum(names).describe("Derivative that is varied."),
      factors: z
        .array(quantity("dimensionless", { description: "Factor on the derivative.", minimum: -100, maximum: 100 }))
        .min(1)
        .max(100)
        .default([0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2])
        .describe("What it is multiplied by, one state each."),
    })
    .optional()
    .meta({ description: "One derivative varied: the roots wander." });
}

const dimensional = z
  .strictObject({
    kind: z.literal("dimensional"),
    ...flight,
    vary: varied(["xu", "xw", "zu", "zw", "zq", "zwDot", "mu", "mw", "mq", "mwDot", "yv", "yp", "yr", "lv", "lp", "lr", "nv", "np", "nr"]),
    longitudinal: z
      .strictObject({
        xu: derivative("X_u over mass [1/s]."),
        xw: derivative("X_w over mass [1/s]."),
        zu: derivative("Z_u over mass [1/s]."),
        zw: derivative("Z_w over mass [1/s]."),
        zq: optionalDerivative("Z_q over mass [m/s]."),
        zwDot: z.number().min(-1e3).max(0.99).meta({ description: "Z of the rate of w, over mass [1]. None is 0." }).default(0),
        mu: derivative("M_u over I_y [1/(m s)]."),
        mw: derivative("M_w over I_y [1/(m s)]."),
        mq: derivative("M_q over I_y [1/s]."),
        mwDot: optionalDerivative("M of the rate of w, over I_y [1/m]."),
      })
      .optional()
      .describe("Of the motion in the plane of symmetry."),
    lateral: z
      .strictObject({
        yv: derivative("Y_v over mass [1/s]."),
        yp: optionalDerivative("Y_p over mass [m/s]."),
        yr: optionalDerivative("Y_r over mass [m/s]."),
        lv: derivative("L_v over I_x [1/(m s)]."),
        lp: derivative("L_p over I_x [1/s]."),
        lr: derivative("L_r over I_x [1/s]."),
        nv: derivative("N_v over I_z [1/(m s)]."),
        np: derivative("N_p over I_z [1/s]."),
        nr: derivative("N_r over I_z [1/s]."),
        productOverRoll: z.number().min(-0.99).max(0.99).default(0).meta({ description: "I_xz over I_x." }),
        productOverYaw: z.number().min(-0.99).max(0.99).default(0).meta({ description: "I_xz over I_z." }),
      })
      .optional()
      .describe("Of the motion out of it."),
  })
  .meta({ label: "Per unit of mass and inertia" });

const coefficients = z
  .strictObject({
    kind: z.literal("coefficients"),
    ...flight,
    vary: varied([
      "cxU",
      "cxAlpha",
      "czU",
      "czAlpha",
      "czQ",
      "czAlphaDot",
      "cmU",
      "cmAlpha",
      "cmQ",
      "cmAlphaDot",
      "cyBeta",
      "cyP",
      "cyR",
      "clBeta",
      "clP",
      "clR",
      "cnBeta",
      "cnP",
      "cnR",
    ]),
    mass: quantity("mass", { description: "Mass.", minimum: 1e-3, maximum: 1e7 }),
    density: quantity("density", { description: "Density of the air.", minimum: 1e-3, maximum: 10 }),
    area: quantity("area", { description: "Area of reference.", minimum: 1e-3, maximum: 1e5 }),
    chord: quantity("length", { description: "Chord of reference.", minimum: 1e-3, maximum: 1e3 }),
    span: quantity("length", { description: "Span of reference.", minimum: 1e-3, maximum: 1e3 }),
    ix: quantity("inertia", { description: "About the axis along the path.", minimum: 1e-6, maximum: 1e12 }),
    iy: quantity("inertia", { description: "About the axis to the right.", minimum: 1e-6, maximum: 1e12 }),
    iz: quantity("inertia", { description: "About the axis normal to both.", minimum: 1e-6, maximum: 1e12 }),
    ixz: quantity("inertia", { description: "Integral of x z over mass.", minimum: -1e12, maximum: 1e12 }).default(0),
    longitudinal: z
      .strictObject({
        cxU: one("C_x over the change of speed over airspeed."),
        cxAlpha: one("C_x over angle of attack."),
        czU: one("C_z over the change of speed over airspeed."),
        czAlpha: one("C_z over angle of attack; lift is negative."),
        czQ: oneOrZero("C_z over q c/2V."),
        czAlphaDot: oneOrZero("C_z over the rate of the angle of attack, times c/2V."),
        cmU: one("C_m over the change of speed over airspeed."),
        cmAlpha: one("C_m over angle of attack."),
        cmQ: one("C_m over q c/2V."),
        cmAlphaDot: oneOrZero("C_m over the rate of the angle of attack, times c/2V."),
      })
      .optional()
      .describe("Of the motion in the plane of symmetry."),
    lateral: z
      .strictObject({
        cyBeta: one("C_y over sideslip."),
        cyP: oneOrZero("C_y over p b/2V."),
        cyR: oneOrZero("C_y over r b/2V."),
        clBeta: one("C_l over sideslip."),
        clP: one("C_l over p b/2V."),
        clR: one("C_l over r b/2V."),
        cnBeta: one("C_n over sideslip."),
        cnP: one("C_n over p b/2V."),
        cnR: one("C_n over r b/2V."),
      })
      .optional()
      .describe("Of the motion out of it."),
  })
  .superRefine(({ ix, iz, ixz }, context) => {
    if (ixz * ixz >= ix * iz)
      context.addIssue({ code: "custom", path: ["ixz"], message: "ixz squared is as large as ix times iz: no body has that" });
  })
  .meta({ label: "Coefficients" });

/** Derivatives written out: of an aeroplane whose modes are to be known without its file. */
export const derivativesInput = z
  .discriminatedUnion("kind", [dimensional, coefficients])
  .superRefine((given, context) => {
    if (!given.longitudinal && !given.lateral)
      context.addIssue({ code: "custom", message: "give the longitudinal derivatives, the lateral ones, or both" });
  })
  .meta({ description: "Derivatives in stability axes, instead of an aircraft of the project." });

export type DerivativesInput = z.infer<typeof derivativesInput>;
