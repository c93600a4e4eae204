/** Free stream at a rotor: its size and its angle to the tip-path plane (`disc`) or to the plane normal to the shaft (`shaft`). */
export interface RotorFlow {
  /** [m/s]. */
  readonly airspeed: number;
  readonly angle: StreamAngle;
}

export interface StreamAngle {
  readonly of: "shaft" | "disc";
  /** Positive tilted back: the stream comes up through the plane [rad]. */
  readonly value: number;
}

/** What the inputs say about the stream. Climb rate is speed along the shaft, positive up; advance ratio in the plane normal to it. */
export type GivenStream =
  | { readonly free: "nothing"; readonly at: (tipSpeed: number) => RotorFlow }
  /** One number is sought: the angle of the stream, or a speed. `at` takes it. */
  | { readonly free: FreeStream; readonly at: (tipSpeed: number, sought: number) => RotorFlow }
  /** Airspeed and shaft angle are both sought. */
  | { readonly free: "airspeed-and-angle" };

/**
 * `angle`: of the stream, speed or advance ratio given. `axial`: speed up through a disc without advance ratio. `airspeed`: along a
 * given angle. `in-plane`: speed along the disc beside a given climb rate.
 */
export type FreeStream = "angle" | "axial" | "airspeed" | "in-plane";

/** Inputs that speak of the stream. */
export interface StreamInputs {
  readonly airspeed?: number | undefined;
  readonly advanceRatio?: number | undefined;
  readonly climbRate?: number | undefined;
  readonly shaftAngle?: number | undefined;
  readonly discAngle?: number | undefined;
}

const shaft = (value: number): StreamAngle => ({ of: "shaft", value });

/** Up through the disc with this speed: from below when positive [m/s]. */
function axialFlow(upward: number): RotorFlow {
  if (upward === 0) return { airspeed: 0, angle: shaft(0) };
  return { airspeed: Math.abs(upward), angle: shaft((Math.sign(upward) * Math.PI) / 2) };
}

function components(inPlane: number, climbRate: number): RotorFlow {
  return inPlane === 0
    ? axialFlow(-climbRate)
    : { airspeed: Math.hypot(inPlane, climbRate), angle: shaft(Math.atan2(-climbRate, inPlane)) };
}

/**
 * The stream that the inputs fix, and what of it is left to be found; a sentence where they contradict each other.
 *
 * @param others how many of rotor speed, collective, thrust and torque are given: with two the stream must be fixed, and a climb rate
 *   alone means axial flow; with three one number is left open; with four both
 * @derivation geometry of the stream in the shaft's plane
 */
export function givenStream(inputs: StreamInputs, others: number): GivenStream | { readonly complaint: string } {
  const { airspeed, advanceRatio, climbRate, shaftAngle, discAngle } = inputs;
  const angle: StreamAngle | undefined =
    discAngle !== undefined ? { of: "disc", value: discAngle } : shaftAngle !== undefined ? shaft(shaftAngle) : undefined;
  if (angle) return withAngle(angle, inputs, others);
  if (others === 4) return { free: "airspeed-and-angle" };
  if (climbRate !== undefined) return withClimb(climbRate, inputs, others);
  if (advanceRatio !== undefined) {
    if (advanceRatio === 0) return others === 2 ? still : { free: "axial", at: (_tipSpeed, upward) => axialFlow(upward) };
    return {
      free: "angle",
      at: (tipSpeed, sought) => ({ airspeed: (advanceRatio * tipSpeed) / Math.cos(sought), angle: shaft(sought) }),
    };
  }
  if (airspeed !== undefined && !(others === 2 && airspeed === 0))
    return { free: "angle", at: (_tipSpeed, sought) => ({ airspeed, angle: shaft(sought) }) };
  return still;
}

const still: GivenStream = { free: "nothing", at: () => ({ airspeed: 0, angle: shaft(0) }) };

function withAngle(angle: StreamAngle, { airspeed, advanceRatio, climbRate }: StreamInputs, others: number) {
  if (airspeed !== undefined) return { free: "nothing", at: () => ({ airspeed, angle }) } as const;
  if (advanceRatio !== undefined)
    return { free: "nothing", at: (tipSpeed: number) => ({ airspeed: (advanceRatio * tipSpeed) / Math.cos(angle.value), angle }) } as const;
  if (climbRate !== undefined) {
    if (climbRate * angle.value > 0 || (climbRate !== 0 && Math.sin(angle.value) === 0))
      return {
        complaint: `climbRate ${climbRate.toPrecision(4)} m/s and an angle of ${degrees(angle.value)}: in climb the stream comes down through the disc, at a negative angle`,
      } as const;
    const along = climbRate === 0 ? 0 : Math.abs(climbRate / Math.sin(angle.value));
    return { free: "nothing", at: () => ({ airspeed: along, angle }) } as const;
  }
  return others === 2
    ? still
    : ({ free: "airspeed", at: (_tipSpeed: number, sought: number): RotorFlow => ({ airspeed: sought, angle }) } as const);
}

function withClimb(climbRate: number, { airspeed, advanceRatio }: StreamInputs, others: number) {
  if (airspeed !== undefined) {
    if (Math.abs(climbRate) > airspeed)
      return {
        complaint: `climbRate ${climbRate.toPrecision(4)} m/s is more than the airspeed of ${airspeed.toPrecision(4)} m/s, of which it is a part`,
      } as const;
    const angle = shaft(airspeed === 0 ? 0 : -Math.asin(climbRate / airspeed));
    return { free: "nothing", at: () => ({ airspeed, angle }) } as const;
  }
  if (advanceRatio !== undefined)
    return { free: "nothing", at: (tipSpeed: number) => components(advanceRatio * tipSpeed, climbRate) } as const;
  if (others === 2) return { free: "nothing", at: () => axialFlow(-climbRate) } as const;
  return { free: "in-plane", at: (_tipSpeed: number, inPlane: number) => components(inPlane, climbRate) } as const;
}

function degrees(angle: number): string {
  return `${((angle * 180) / Math.PI).toPrecision(3)}°`;
}
