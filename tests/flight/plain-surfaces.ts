// Wings, tails, fins and bodies written out plainly: forces from the air they meet, in body axes.
import type { AircraftDefinition } from "../../packages/engine/src/aircraft/definition.ts";
import { cross, dot, scaled, sum, type Vector } from "./plain-vectors.ts";

export type SurfacePart = AircraftDefinition["surfaces"][number];
export type BodyPart = AircraftDefinition["bodies"][number];

/** Force at a place, and a moment of its own [N], [N m]. */
export interface PlainForce {
  readonly force: Vector;
  readonly moment: Vector;
}

export interface PlainSurface extends PlainForce {
  /** Mean lift coefficient [1]. */
  readonly lift: number;
}

const ahead: Vector = [1, 0, 0];

/** Direction in which a surface lifts: up for a wing, to the left for an upright fin. */
const liftSide = (dihedral: number): Vector => [0, -Math.sin(dihedral), -Math.cos(dihedral)];

/** Share of attached flow [1]. */
function attachedShare(stall: { readonly angle: number; readonly sharpness: number }, alpha: number): number {
  return 1 / (1 + Math.exp(stall.sharpness * (Math.abs(alpha) - stall.angle)));
}

interface Coefficients {
  readonly lift: number;
  readonly drag: number;
}

/** Lift and drag coefficient of a surface at an angle from its zero-lift line [rad]. */
export function surfaceCoefficients(surface: SurfacePart, alpha: number): Coefficients {
  const stall = surface.stall ?? {
    angle: (1.15 * surface.maximumLiftCoefficient) / surface.liftSlope,
    sharpness: 60,
    flatPlateCoefficient: 1.2,
  };
  const attached = attachedShare(stall, alpha);
  const straight = surface.liftSlope * alpha;
  const aspect = surface.aspectRatio ?? surface.span ** 2 / surface.area;
  const induced = straight ** 2 / (Math.PI * aspect * surface.spanEfficiency);
  return {
    lift: attached * straight + (1 - attached) * stall.flatPlateCoefficient * Math.sin(alpha) * Math.cos(alpha),
    drag: surface.cd0 + attached * induced + (1 - attached) * stall.flatPlateCoefficient * Math.sin(alpha) ** 2,
  };
}

/** Legendre's points of four across a span from −1 to 1 and their weights, which add up to 1. */
const inner = Math.sqrt(3 / 7 - (2 / 7) * Math.sqrt(6 / 5));
const outer = Math.sqrt(3 / 7 + (2 / 7) * Math.sqrt(6 / 5));
const cuts = [-outer, -inner, inner, outer].map((at) => ({ at, share: (18 + (Math.abs(at) < 0.5 ? 1 : -1) * Math.sqrt(30)) / 72 }));

/** How trailing edges stand, by their names [rad]. */
export type EdgeSettings = Readonly<Record<string, number>>;

/**
 * A surface with its chord turned by `deflection` beyond its incidence [rad]: strips across the span, each in the air of its own place;
 * what blows along the span does nothing. Force and moment about the point that `at` counts from.
 *
 * @param at of the middle of the span [m]
 * @param velocityAt velocity through the air of a place [m/s]
 */
export function plainSurface(
  surface: SurfacePart,
  density: number,
  at: Vector,
  velocityAt: (place: Vector) => Vector,
  deflection: number,
  edges: EdgeSettings = {},
): PlainSurface {
  const chord = surface.area / surface.span;
  const strip = (
    place: number,
    share: number,
    coefficients: (alpha: number) => Coefficients & { readonly moment: number },
  ): PlainSurface => {
    const dihedral = surface.dihedral + Math.sign(place) * surface.tipDihedral;
    const reach = (place * surface.span) / 2;
    const where = sum(at, [0, reach * Math.cos(dihedral), -reach * Math.sin(dihedral)]);
    const lifting = liftSide(dihedral);
    const velocity = velocityAt(where);
    const [forward, toward] = [dot(velocity, ahead), dot(velocity, lifting)];
    const angle = Math.atan2(-toward, forward);
    const { lift, drag, moment } = coefficients(turnedBack(angle + surface.incidence + deflection - surface.zeroLiftAngle));
    const pressureArea = 0.5 * density * (forward ** 2 + toward ** 2) * surface.area * share;
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    // Drag along the stream (−cos, sin) in (ahead, lifting), lift across it (sin, cos).
    const force = sum(
      scaled(pressureArea * (lift * sine - drag * cosine), ahead),
      scaled(pressureArea * (lift * cosine + drag * sine), lifting),
    );
    // Nose toward the lifting side.
    return { lift: lift * share, force, moment: sum(cross(where, force), scaled(pressureArea * chord * moment, cross(ahead, lifting))) };
  };
  const pieces = cuts.map(({ at: place, share }) =>
    strip(place, share, (alpha) => ({ ...surfaceCoefficients(surface, alpha), moment: surface.momentCoefficient })),
  );
  for (const edge of surface.movables) {
    const set = edges[edge.id] ?? 0;
    for (const side of [-1, 1]) {
      if ((edge.side === "left" && side > 0) || (edge.side === "right" && side < 0)) continue;
      const place = (side * (edge.inner + edge.outer)) / 2;
      const share = (edge.outer - edge.inner) / 2;
      pieces.push(
        strip(place, share, () => ({
          lift: edge.liftPerDeflection * set,
          drag: edge.dragPerDeflectionSquared * set ** 2,
          moment: edge.momentPerDeflection * set,
        })),
      );
    }
  }
  return {
    force: sum(...pieces.map(({ force }) => force)),
    moment: sum(...pieces.map(({ moment }) => moment)),
    lift: pieces.reduce((total, { lift }) => total + lift, 0),
  };
}

const turnedBack = (angle: number): number => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Drag of a body along its path, and of the share of its upper side that lies in air blown down on it [m/s]. */
export function plainBodyForces(
  body: BodyPart,
  density: number,
  velocity: Vector,
  blownDown: number,
  share = 1,
): { readonly along: Vector; readonly above: Vector } {
  const onto = (down: number) => -0.5 * density * down * Math.abs(down) * body.verticalDragArea;
  return {
    along: scaled(-0.5 * density * Math.hypot(...velocity) * body.dragArea, velocity),
    above: [0, 0, share * onto(velocity[2] - blownDown) + (1 - share) * onto(velocity[2])],
  };
}

/** Drag of a body to flow from the side. */
export const plainSideForce = (body: BodyPart, density: number, velocity: Vector): Vector => [
  0,
  -0.5 * density * velocity[1] * Math.abs(velocity[1]) * body.sideDragArea,
  0,
];
