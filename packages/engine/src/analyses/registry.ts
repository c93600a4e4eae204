import { atmosphere } from "./atmosphere.ts";
import { battery } from "./battery.ts";
import type { Analysis } from "./contract.ts";
import { mission } from "./mission.ts";
import { payload } from "./payload.ts";
import { rotor } from "./rotor.ts";
import { section } from "./section.ts";
import { speed } from "./speed.ts";

/** Every analysis of the house, in the order of the questions. One line each. */
export const analyses: readonly Analysis[] = [payload, speed, mission, rotor, section, battery, atmosphere];
