import { type ControlRange, controlRange, takeoffMass } from "../aircraft/index.ts";
import type { FlightConditions, FlightPoint } from "./conditions.ts";

/**
 * Tip speeds that trim may use [m/s]. A scheduled governor speed grows with the square root of mass over density from its
 * reference, and is held within the permitted range; at `optimum`, and with the clutch open, the whole range is free.
 */
export function tipSpeedRange(conditions: FlightConditions, point: FlightPoint): ControlRange & { readonly held: boolean } {
  const { clutchClosed, clutchOpen } = conditions.aircraft.rotorControls;
  if (point.mode !== "clutch-closed") {
    return { minimum: clutchOpen.tipSpeedMinimum, maximum: clutchOpen.tipSpeedMaximum, held: false };
  }
  const asked = controlRange(clutchClosed.tipSpeed, point.forwardSpeed, conditions.controls);
  if (clutchClosed.tipSpeed.kind !== "scheduled" || conditions.controls === "optimum") return { ...asked, held: false };
  const reference = clutchClosed.tipSpeedReference;
  const factor = reference
    ? Math.sqrt((takeoffMass(conditions.aircraft, conditions.loading) / reference.mass) * (reference.density / conditions.air.density))
    : 1;
  const wanted = asked.minimum * factor;
  const given = Math.min(clutchClosed.tipSpeed.maximum, Math.max(clutchClosed.tipSpeed.minimum, wanted));
  return { minimum: given, maximum: given, held: given !== wanted };
}
