import { atmosphere } from "./atmosphere.ts";
import { battery } from "./battery.ts";
import type { Analysis } from "./contract.ts";
import { mission } from "./mission.ts";
import { motor } from "./motor.ts";
import { payload } from "./payload.ts";
import { propeller } from "./propeller.ts";
import { rotor } from "./rotor.ts";
import { section } from "./section.ts";
import { speed } from "./speed.ts";
import { wing } from "./wing.ts";

/** Every analysis of the house, in the order of the questions. One line each. */
export const analyses: readonly Analysis[] = [payload, speed, mission, rotor, propeller, section, wing, motor, battery, atmosphere];
