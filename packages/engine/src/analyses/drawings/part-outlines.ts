import type { AircraftDefinition, BodyPart, PropellerPart, RotorPart, SurfacePart } from "../../aircraft/index.ts";
import type { SceneLine, ScenePoint } from "../figures.ts";
import { circlePoints, hullOutlines, offset } from "./solid-outlines.ts";

/** How a part is called in words: `left-propeller` is "left propeller". */
export function partName(id: string): string {
  return id.replaceAll("-", " ");
}

/** The same with what it is, where the id does not say it: the rotor `main` is "main rotor". */
export function kindName(id: string, kind: string): string {
  return id.includes(kind) ? partName(id) : `${partName(id)} ${kind}`;
}

export function asPoint({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): ScenePoint {
  return [x, y, z];
}

/** Unit vectors of a rotor: up its shaft, forward and right in its disc. */
export function rotorAxes({ shaftTilt: { back, right } }: RotorPart): {
  readonly up: ScenePoint;
  readonly forward: ScenePoint;
  readonly right: ScenePoint;
} {
  return {
    up: [-Math.sin(back) * Math.cos(right), Math.sin(right), -Math.cos(back) * Math.cos(right)],
    forward: [Math.cos(back), 0, -Math.sin(back)],
    right: [Math.sin(back) * Math.sin(right), Math.cos(right), Math.cos(back) * Math.sin(right)],
  };
}

/** Where the first blade is drawn, from behind [rad]: clear of wing and hull in every view. */
const drawnAzimuth = 0.6;

/** The disc and the blades with their chord, raised by the built-in cone. */
export function rotorOutlines(rotor: RotorPart): readonly SceneLine[] {
  const name = kindName(rotor.id, "rotor");
  const hub = asPoint(rotor.hub);
  const { up, forward, right } = rotorAxes(rotor);
  const rise = rotor.radius * Math.sin(rotor.precone);
  const disc = circlePoints(offset(hub, [[up, rise]]), rotor.radius * Math.cos(rotor.precone), forward, right);
  const blades = Array.from({ length: rotor.blades }, (_, index): SceneLine => {
    const azimuth = drawnAzimuth + (index / rotor.blades) * 2 * Math.PI;
    const along = offset(
      [0, 0, 0],
      [
        [forward, -Math.cos(azimuth)],
        [right, Math.sin(azimuth)],
      ],
    );
    const ahead = offset(
      [0, 0, 0],
      [
        [forward, Math.sin(azimuth)],
        [right, Math.cos(azimuth)],
      ],
    );
    const edge = (side: number) => {
      const shares = [
        rotor.rootCutout,
        ...rotor.stations.map((station) => station.radiusFraction).filter((share) => share > rotor.rootCutout),
      ];
      return shares.map((share) =>
        offset(hub, [
          [along, share * rotor.radius * Math.cos(rotor.precone)],
          [up, share * rise],
          [ahead, side * chordAt(rotor, share)],
        ]),
      );
    };
    return { name, meaning: "rotor", closed: true, weight: "thin", points: [...edge(0.25), ...edge(-0.75).toReversed()] };
  });
  return [{ name, meaning: "rotor", closed: true, points: disc }, ...blades];
}

function chordAt({ stations }: RotorPart, share: number): number {
  const after = stations.findIndex((station) => station.radiusFraction >= share);
  const [low, high] = [stations[Math.max(0, after - 1)], stations[after < 0 ? stations.length - 1 : after]];
  if (!low || !high) return 0;
  const span = high.radiusFraction - low.radiusFraction;
  return span > 0 ? low.chord + ((share - low.radiusFraction) / span) * (high.chord - low.chord) : high.chord;
}

/** The disc of a propeller, square to its thrust. */
export function propellerOutlines(propeller: PropellerPart): readonly SceneLine[] {
  const { up, right } = propeller.axis;
  const aside: ScenePoint = [-Math.sin(right), Math.cos(right), 0];
  const upward: ScenePoint = [-Math.sin(up) * Math.cos(right), -Math.sin(up) * Math.sin(right), -Math.cos(up)];
  const points = circlePoints(asPoint(propeller.place), propeller.diameter / 2, aside, upward);
  return [{ name: kindName(propeller.id, "propeller"), meaning: "propellers", closed: true, points }];
}

/** Outline of a surface by its span and mean chord, and the parts of its trailing edge that move. */
export function surfaceOutlines(surface: SurfacePart): readonly SceneLine[] {
  const chord = surface.area / surface.span;
  const at = (share: number, back: number): ScenePoint => {
    const angle = surface.dihedral + (share < 0 ? -1 : 1) * surface.tipDihedral;
    const span: ScenePoint = [0, Math.cos(angle), -Math.sin(angle)];
    const up: ScenePoint = [0, -Math.sin(angle), -Math.cos(angle)];
    const [cos, sin] = [Math.cos(surface.incidence), Math.sin(surface.incidence)];
    return offset(asPoint(surface.place), [
      [span, (share * surface.span) / 2],
      [[1, 0, 0], (0.25 - back) * chord * cos],
      [up, (0.25 - back) * chord * sin],
    ]);
  };
  const halves = [-1, 0, 1];
  const outline = [...halves.map((share) => at(share, 0)), ...halves.toReversed().map((share) => at(share, 1))];
  const moving = surface.movables.flatMap((movable) =>
    (["left", "right"] as const)
      .filter((side) => movable.side === "both" || movable.side === side)
      .map((side): SceneLine => {
        const sign = side === "left" ? -1 : 1;
        return { name: partName(movable.id), meaning: "wing", points: [at(sign * movable.inner, 1), at(sign * movable.outer, 1)] };
      }),
  );
  return [{ name: partName(surface.id), meaning: "wing", closed: true, points: outline }, ...moving];
}

/** The hulls of a body; where the file has none, a square plate of its drag area where the drag acts. */
export function bodyOutlines(body: BodyPart): readonly SceneLine[] {
  const look = { name: partName(body.id), meaning: "body" } as const;
  if (body.hulls.length > 0) return body.hulls.flatMap(({ centre, size }) => hullOutlines(look, centre, size));
  const half = Math.sqrt(body.dragArea) / 2;
  const { x, y, z } = body.place;
  const points: readonly ScenePoint[] = [
    [x, y - half, z - half],
    [x, y + half, z - half],
    [x, y + half, z + half],
    [x, y - half, z + half],
  ];
  return half > 0 ? [{ ...look, name: `${look.name}, plate of its drag area`, closed: true, weight: "thin", points }] : [];
}

/** The axis of a rotor from its hub down to the height of the empty aircraft's centre of gravity. */
function shaftOutline(rotor: RotorPart, depth: number): SceneLine {
  const { up } = rotorAxes(rotor);
  const length = up[2] === 0 ? 0 : Math.max(0, (rotor.hub.z - depth) / up[2]);
  const hub = asPoint(rotor.hub);
  return { name: kindName(rotor.id, "rotor"), meaning: "rotor", weight: "thin", points: [hub, offset(hub, [[up, -length]])] };
}

/** Every part of an aircraft that has a shape, without its load. */
export function airframeOutlines(aircraft: AircraftDefinition): readonly SceneLine[] {
  return [
    ...aircraft.rotors.map((rotor) => shaftOutline(rotor, aircraft.emptyCentre.z)),
    ...aircraft.bodies.flatMap(bodyOutlines),
    ...aircraft.surfaces.flatMap(surfaceOutlines),
    ...aircraft.propellers.flatMap(propellerOutlines),
    ...aircraft.rotors.flatMap(rotorOutlines),
  ];
}
