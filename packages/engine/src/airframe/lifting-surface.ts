import { type FiniteWing, wingCoefficients } from "../aerodynamics/wing/index.ts";
import { type SurfacePart, stallOf } from "../aircraft/index.ts";
import type { Vector } from "./axes.ts";

/** Where a surface is cut across the span, and its share of the area: Gauss's points, exact for a rolling motion. */
const cuts = [
  [-0.8611363115940526, 0.17392742256872692],
  [-0.33998104358485626, 0.32607257743127305],
  [0.33998104358485626, 0.32607257743127305],
  [0.8611363115940526, 0.17392742256872692],
] as const;

interface Strip {
  readonly place: Vector;
  /** Right half +1, left half −1. */
  readonly side: 1 | -1;
  readonly share: number;
  /** Direction of lift at no angle of attack, and across it: the built-in chord. */
  readonly normal: Vector;
}

/** A trailing edge with the place and area that it moves. */
interface Edge {
  readonly id: string;
  readonly strip: Strip;
  readonly liftPerDeflection: number;
  readonly momentPerDeflection: number;
  readonly dragPerDeflectionSquared: number;
}

/** Air in which a surface moves, beyond that of the aircraft's own motion: velocity of the surface through it [m/s]. */
export type LocalFlow = Vector;

/** What a surface does, written by `evaluate` of `LiftingSurface`. */
export interface SurfaceLoads {
  /** Body axes [N]. */
  fx: number;
  fy: number;
  fz: number;
  /** About the centre of gravity [N m]. */
  mx: number;
  my: number;
  mz: number;
  /** Area-weighted mean lift coefficient, flaps included [1]. */
  lift: number;
  /** Largest lift coefficient of one strip over the largest permitted, either sign [1]. */
  lowestLift: number;
  highestLift: number;
  /** Extreme angles of attack of its strips, from that without lift [rad]. */
  lowestAngle: number;
  highestAngle: number;
  /** Mean angle of attack [rad]. */
  angle: number;
}

/**
 * A wing, tailplane or fin: strips across the span, each in the flow of its own place, with lift across the local flow and drag along it.
 * Flow along the span is left out (independence of sweep).
 *
 * @source etkin-reid-1996, strip theory of rolling wings, from memory
 */
export class LiftingSurface {
  readonly part: SurfacePart;
  readonly loads: SurfaceLoads = {
    fx: 0,
    fy: 0,
    fz: 0,
    mx: 0,
    my: 0,
    mz: 0,
    lift: 0,
    lowestLift: 0,
    highestLift: 0,
    lowestAngle: 0,
    highestAngle: 0,
    angle: 0,
  };
  readonly #wing: FiniteWing;
  readonly #strips: readonly Strip[];
  readonly #edges: readonly Edge[];
  readonly #meanChord: number;
  readonly #density: number;
  #set = 0;
  #piece = 1;
  #edgeDeflections: Float64Array = new Float64Array(0);

  constructor(part: SurfacePart, density: number, centre: Vector) {
    this.part = part;
    this.#density = density;
    const aspectRatio = part.aspectRatio ?? part.span ** 2 / part.area;
    const stall = stallOf(part);
    this.#wing = {
      area: part.area,
      // The span that has this aspect ratio: only the ratio counts in the law.
      span: Math.sqrt(aspectRatio * part.area),
      liftSlope: part.liftSlope,
      cd0: part.cd0,
      spanEfficiency: part.spanEfficiency,
      stallAngle: stall.angle,
      stallSharpness: stall.sharpness,
      flatPlateCoefficient: stall.flatPlateCoefficient,
    };
    this.#meanChord = part.area / part.span;
    this.#strips = cuts.map(([at, share]) => stripAt(part, centre, at, share));
    this.#edges = part.movables.flatMap((movable) =>
      (["left", "right"] as const)
        .filter((side) => movable.side === "both" || movable.side === side)
        .map((side) => ({
          id: movable.id,
          strip: stripAt(
            part,
            centre,
            ((side === "right" ? 1 : -1) * (movable.inner + movable.outer)) / 2,
            Math.abs(movable.outer - movable.inner) / 2,
          ),
          liftPerDeflection: movable.liftPerDeflection,
          momentPerDeflection: movable.momentPerDeflection,
          dragPerDeflectionSquared: movable.dragPerDeflectionSquared,
        })),
    );
  }

  get liftSlope(): number {
    return this.#wing.liftSlope;
  }

  /** Names of the trailing edges, one for each half that they are on. */
  get edges(): readonly string[] {
    return this.#edges.map(({ id }) => id);
  }

  /**
   * Clears the loads and sets the surface.
   *
   * @param deflection beyond the built-in incidence [rad]
   * @param edgeDeflections per entry of `edges` [rad]
   */
  begin(deflection: number, edgeDeflections: Float64Array): void {
    const sum = this.loads;
    sum.fx = 0;
    sum.fy = 0;
    sum.fz = 0;
    sum.mx = 0;
    sum.my = 0;
    sum.mz = 0;
    sum.lift = 0;
    sum.angle = 0;
    sum.lowestLift = Number.POSITIVE_INFINITY;
    sum.highestLift = Number.NEGATIVE_INFINITY;
    sum.lowestAngle = Number.POSITIVE_INFINITY;
    sum.highestAngle = Number.NEGATIVE_INFINITY;
    this.#set = this.part.incidence + deflection;
    this.#edgeDeflections = edgeDeflections;
  }

  /**
   * Adds a piece of the surface.
   *
   * @param velocity of the centre of gravity through the air [m/s]
   * @param rates [rad/s]
   * @param flow velocity through the air that other parts move, on top [m/s]
   * @param share of the surface that lies in it [1]
   */
  add(velocity: Vector, rates: Vector, flow: LocalFlow, share: number): void {
    const sineSet = Math.sin(this.#set);
    const cosineSet = Math.cos(this.#set);
    this.#piece = share;
    for (const strip of this.#strips) this.#strip(strip, velocity, rates, flow, sineSet, cosineSet);
    for (let i = 0; i < this.#edges.length; i++) {
      const deflected = this.#edgeDeflections[i] as number;
      if (deflected !== 0) this.#edge(this.#edges[i] as Edge, velocity, rates, flow, sineSet, cosineSet, deflected);
    }
  }

  #strip(strip: Strip, velocity: Vector, rates: Vector, flow: LocalFlow, sineSet: number, cosineSet: number): void {
    const { place, normal } = strip;
    const share = strip.share * this.#piece;
    const wx = velocity[0] + rates[1] * place[2] - rates[2] * place[1] + flow[0];
    const wy = velocity[1] + rates[2] * place[0] - rates[0] * place[2] + flow[1];
    const wz = velocity[2] + rates[0] * place[1] - rates[1] * place[0] + flow[2];
    // Chord c = x cos i + n sin i, normal to it n' = n cos i − x sin i.
    const along = wx * cosineSet + (wy * normal[1] + wz * normal[2]) * sineSet;
    const against = wx * sineSet - (wy * normal[1] + wz * normal[2]) * cosineSet;
    const squared = along * along + against * against;
    if (squared === 0) {
      this.loads.lowestLift = Math.min(this.loads.lowestLift, 0);
      this.loads.highestLift = Math.max(this.loads.highestLift, 0);
      this.loads.lowestAngle = Math.min(this.loads.lowestAngle, 0);
      this.loads.highestAngle = Math.max(this.loads.highestAngle, 0);
      return;
    }
    const speed = Math.sqrt(squared);
    const alpha = Math.atan2(against, along) - this.part.zeroLiftAngle;
    const { lift, drag } = wingCoefficients(this.#wing, alpha);
    const force = 0.5 * this.#density * squared * this.part.area * share;
    this.#add(strip, force * lift, force * drag, along / speed, against / speed, sineSet, cosineSet);
    if (this.part.momentCoefficient !== 0) this.#pitch(strip, force * this.#meanChord * this.part.momentCoefficient);
    const sum = this.loads;
    sum.lift += share * lift;
    sum.angle += share * alpha;
    sum.lowestLift = Math.min(sum.lowestLift, lift);
    sum.highestLift = Math.max(sum.highestLift, lift);
    sum.lowestAngle = Math.min(sum.lowestAngle, alpha);
    sum.highestAngle = Math.max(sum.highestAngle, alpha);
  }

  #edge(
    { strip, liftPerDeflection, momentPerDeflection, dragPerDeflectionSquared }: Edge,
    velocity: Vector,
    rates: Vector,
    flow: LocalFlow,
    sineSet: number,
    cosineSet: number,
    deflected: number,
  ): void {
    const { place, normal } = strip;
    const share = strip.share * this.#piece;
    const wx = velocity[0] + rates[1] * place[2] - rates[2] * place[1] + flow[0];
    const wy = velocity[1] + rates[2] * place[0] - rates[0] * place[2] + flow[1];
    const wz = velocity[2] + rates[0] * place[1] - rates[1] * place[0] + flow[2];
    const along = wx * cosineSet + (wy * normal[1] + wz * normal[2]) * sineSet;
    const against = wx * sineSet - (wy * normal[1] + wz * normal[2]) * cosineSet;
    const squared = along * along + against * against;
    if (squared === 0) return;
    const speed = Math.sqrt(squared);
    const force = 0.5 * this.#density * squared * this.part.area * share;
    const lift = liftPerDeflection * deflected;
    this.#add(
      strip,
      force * lift,
      force * dragPerDeflectionSquared * deflected * deflected,
      along / speed,
      against / speed,
      sineSet,
      cosineSet,
    );
    this.#pitch(strip, force * this.#meanChord * momentPerDeflection * deflected);
    this.loads.lift += share * lift;
    this.loads.highestLift = Math.max(this.loads.highestLift, this.loads.lift);
    this.loads.lowestLift = Math.min(this.loads.lowestLift, this.loads.lift);
  }

  /** Lift across the local flow, drag along it; `cosine` and `sine` of the angle of attack. */
  #add(strip: Strip, lift: number, drag: number, cosine: number, sine: number, sineSet: number, cosineSet: number): void {
    const { place, normal } = strip;
    const sum = this.loads;
    const alongChord = lift * sine - drag * cosine;
    const alongNormal = lift * cosine + drag * sine;
    const fx = alongChord * cosineSet - alongNormal * sineSet;
    const across = alongChord * sineSet + alongNormal * cosineSet;
    const fy = across * normal[1];
    const fz = across * normal[2];
    sum.fx += fx;
    sum.fy += fy;
    sum.fz += fz;
    sum.mx += place[1] * fz - place[2] * fy;
    sum.my += place[2] * fx - place[0] * fz;
    sum.mz += place[0] * fy - place[1] * fx;
  }

  /** A moment about the span, nose towards the lift. */
  #pitch({ normal }: Strip, moment: number): void {
    // The span axis is x × (−n)… for a wing the right axis: nose up turns x towards n.
    this.loads.my += -normal[2] * moment;
    this.loads.mz += normal[1] * moment;
  }
}

function stripAt(part: SurfacePart, centre: Vector, at: number, share: number): Strip {
  const side = at < 0 ? -1 : 1;
  const turned = part.dihedral + side * part.tipDihedral;
  const reach = (at * part.span) / 2;
  return {
    place: [
      part.place.x - centre[0],
      part.place.y + reach * Math.cos(turned) - centre[1],
      part.place.z - reach * Math.sin(turned) - centre[2],
    ],
    side,
    share,
    normal: [0, -Math.sin(turned), -Math.cos(turned)],
  };
}
