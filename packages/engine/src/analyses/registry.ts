import { atmosphere } from "./atmosphere/atmosphere.ts";
import { balance } from "./balance/balance.ts";
import { battery } from "./battery/battery.ts";
import type { Analysis } from "./contract.ts";
import { envelope } from "./envelope/envelope.ts";
import { mission } from "./mission/mission.ts";
import { motor } from "./motor/motor.ts";
import { payload } from "./payload/payload.ts";
import { propeller } from "./propeller/propeller.ts";
import { rotor } from "./rotor/rotor.ts";
import { section } from "./section/section.ts";
import { speed } from "./speed/speed.ts";
import { stability } from "./stability/stability.ts";
import { transient } from "./transient/transient.ts";
import { transition } from "./transition/transition.ts";
import { trim } from "./trim/trim.ts";
import { wing } from "./wing/wing.ts";

/** Every analysis of the house, in the order of the questions. One line each. */
export const analyses: readonly Analysis[] = [
  payload,
  speed,
  balance,
  trim,
  envelope,
  transition,
  stability,
  transient,
  mission,
  rotor,
  propeller,
  section,
  wing,
  motor,
  battery,
  atmosphere,
];
