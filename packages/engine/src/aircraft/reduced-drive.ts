import type { ControlPart } from "./control-part.ts";
import type { AircraftDefinition } from "./definition.ts";
import type { DriveLine } from "./drive-line.ts";
import type { MotorDefinition } from "./motor-part.ts";
import type { PropellerPart } from "./propeller-part.ts";
import type { PropellersDefinition, RotorControls, RotorDrive } from "./reduced-aircraft.ts";
import type { RotorPart } from "./rotor-part.ts";
import { partCalled, Unfit } from "./unfit.ts";

type Roles = NonNullable<AircraftDefinition["reduced"]>;

/** The rotor: teetering, upright, counter-clockwise. */
export function reducedRotor(aircraft: AircraftDefinition, id: string): RotorPart {
  const rotor = partCalled("rotor", aircraft.rotors, id);
  const { articulation, shaftTilt, turns } = rotor;
  if (articulation.kind !== "teetering" || articulation.pitchFlapCoupling !== 0)
    throw new Unfit(`The rotor ${id} must teeter without pitch-flap coupling.`);
  if (shaftTilt.back !== 0 || shaftTilt.right !== 0) throw new Unfit(`The shaft of the rotor ${id} is tilted.`);
  if (turns !== "counter-clockwise") throw new Unfit(`The rotor ${id} turns clockwise.`);
  return rotor;
}

export function reducedRotorControls(aircraft: AircraftDefinition, rotor: RotorPart): RotorControls {
  const tipSpeed = controlOf(aircraft, rotor.id, "tip-speed");
  const collective = controlOf(aircraft, rotor.id, "collective");
  return {
    clutchClosed: {
      tipSpeed: tipSpeed.setting,
      ...(tipSpeed.reference ? { tipSpeedReference: tipSpeed.reference } : {}),
      collective: collective.setting,
    },
    clutchOpen: {
      collective: collective.clutchOpen ?? collective.setting,
      tipSpeedMinimum: rotor.tipSpeedMinimum,
      tipSpeedMaximum: rotor.tipSpeedMaximum,
    },
  };
}

function controlOf<What extends ControlPart["what"]>(
  aircraft: AircraftDefinition,
  part: string,
  what: What,
): Extract<ControlPart, { readonly what: What }> {
  const found = aircraft.controls.find(
    (one): one is Extract<ControlPart, { readonly what: What }> => one.part === part && one.what === what,
  );
  if (found === undefined) throw new Unfit(`No control sets the ${what} of ${part}.`);
  return found;
}

export function reducedRotorDrive(aircraft: AircraftDefinition, rotor: string): RotorDrive {
  const line = lineOf(aircraft, rotor);
  if (line.clutch !== "one-way") throw new Unfit(`The drive line ${line.id} has no one-way clutch.`);
  // From the motor to the rotor: a stage's losses are paid through the stages before it.
  let gearRatio = 1;
  let gearConstantLoss = 0;
  let gearProportionalLoss = 0;
  for (const { ratio, constantLoss, proportionalLoss } of line.gearStages) {
    gearConstantLoss += constantLoss + gearProportionalLoss * constantLoss;
    gearRatio *= ratio;
    gearProportionalLoss += proportionalLoss + gearProportionalLoss * proportionalLoss;
  }
  return { motor: motorOf(line), gearRatio, gearConstantLoss, gearProportionalLoss, constantEfficiency: efficiencyOf(line) };
}

export function reducedPropellers(aircraft: AircraftDefinition, roles: Roles): PropellersDefinition {
  const right = partCalled("propeller", aircraft.propellers, roles.rightPropeller);
  const left = partCalled("propeller", aircraft.propellers, roles.leftPropeller);
  const lines = [lineOf(aircraft, right.id), lineOf(aircraft, left.id)] as const;
  const motor = motorOf(lines[0]);
  const constantEfficiency = efficiencyOf(lines[0]);
  const mirrored = right.place.y > 0 && left.place.y === -right.place.y && left.place.x === right.place.x && left.place.z === right.place.z;
  if (!mirrored) throw new Unfit(`The propellers ${right.id} and ${left.id} do not mirror each other.`);
  if (right.axis.up !== 0 || right.axis.right !== 0) throw new Unfit(`The propeller ${right.id} does not pull straight forward.`);
  const alike = same(shape(right), shape(left)) && same(motor, motorOf(lines[1])) && constantEfficiency === efficiencyOf(lines[1]);
  if (!alike) throw new Unfit(`The propellers ${right.id} and ${left.id} are not alike, or their motors are not.`);
  for (const line of lines)
    if (line.gearStages.length > 0) throw new Unfit(`The drive line ${line.id} has a gear; propellers turn with their motors.`);
  return { ...shape(right), place: right.place, motor, constantEfficiency };
}

function shape({ id: _, place: _place, turns: _turns, ...others }: PropellerPart): Omit<PropellerPart, "id" | "place" | "turns"> {
  return others;
}

function same(first: object, second: object): boolean {
  return JSON.stringify(first) === JSON.stringify(second);
}

function lineOf(aircraft: AircraftDefinition, part: string): DriveLine {
  const line = aircraft.driveLines.find(({ drives }) => drives === part);
  if (line === undefined) throw new Unfit(`No drive line turns ${part}.`);
  return line;
}

function motorOf(line: DriveLine): MotorDefinition {
  const [only, ...others] = line.motors;
  if (only === undefined || others.length > 0) throw new Unfit(`The drive line ${line.id} has ${line.motors.length} motors; one is known.`);
  return only.motor;
}

function efficiencyOf(line: DriveLine): number {
  if (line.constantEfficiency === undefined) throw new Unfit(`The drive line ${line.id} states no constantEfficiency.`);
  return line.constantEfficiency;
}
