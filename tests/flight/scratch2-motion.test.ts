import { test } from "vitest";
import { demoTrimmer } from "./six-trim.ts";
import { movingFlight } from "../../packages/engine/src/motion/trimmed-flight.ts";
import { linearise } from "../../packages/engine/src/motion/linearisation.ts";
import { modesOf } from "../../packages/engine/src/motion/modes.ts";
import { sweepRotor } from "../../packages/engine/src/aerodynamics/rotor/index.ts";
test("x", async () => {
  const trimmer = await demoTrimmer("baseline");
  const trimmed = trimmer.trim({ mode: "clutch-closed", airspeed: 0, climbRate: 0 });
  if (trimmed.kind !== "trimmed") return;
  const { dynamics, state } = movingFlight(trimmer.airframe, trimmed, 1e-8);
  const show = (motion: any) => (modesOf(motion) ?? []).map((m) => `${m.name} ${m.real.toFixed(3)}${m.imaginary ? ` ± ${m.imaginary.toFixed(3)}i` : ""}`).join("; ");
  for (const s of [10, 5, 2, 1, 0.5, 0.25, 0.1, 0.03]) { const lin = linearise(dynamics, state, s);
   console.log(s, "Xu", lin.matrix[0]!.toFixed(5), "Mu", lin.matrix[20]!.toFixed(5), "Yv", lin.matrix[4*10+4]!.toFixed(5), "Lv", lin.matrix[5*10+4]!.toFixed(5), "Mq", lin.matrix[22]!.toFixed(4), "Xq", lin.matrix[2]!.toFixed(4), "Mv", lin.matrix[24]!.toFixed(4), "Lu", lin.matrix[50]!.toFixed(4), show(lin)); }
  const rotor = trimmer.airframe.rotors[0]!;
  const ws = rotor.workspace as any;
  for (let rep = 0; rep < 3; rep++) {
    let t = performance.now(); for (let k = 0; k < 3000; k++) sweepRotor(ws, ws.state); 
    console.log("sweep µs", ((performance.now() - t) / 3).toFixed(1));
    const rs = Float64Array.from(dynamics.rotorStates);
    t = performance.now(); for (let k = 0; k < 3000; k++) { rs[2] = 0.01 + 1e-7 * k; trimmer.airframe.evaluate({ velocity: [0.1, 0, 0], rates: [0, 0, 0] }, dynamics.controls, rs, dynamics.running, dynamics.torques); }
    console.log("evaluate µs", ((performance.now() - t) / 3).toFixed(1));
    t = performance.now(); for (let k = 0; k < 3000; k++) { trimmer.airframe.evaluate({ velocity: [0.1, 0, 0], rates: [0, 0, 0] }, dynamics.controls, rs, dynamics.running, dynamics.torques); }
    console.log("evaluate without sweep µs", ((performance.now() - t) / 3).toFixed(1));
  }
}, 100000);
