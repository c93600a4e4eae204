import { test } from "vitest";
import { demoTrimmer } from "./six-trim.ts";
import { movingFlight } from "../../packages/engine/src/motion/trimmed-flight.ts";
import { linearise } from "../../packages/engine/src/motion/linearisation.ts";
import { modesOf } from "../../packages/engine/src/motion/modes.ts";
import { withHeld, withFollowing, splitMotion } from "../../packages/engine/src/motion/linear-reduction.ts";
import { MultistepIntegrator } from "../../packages/engine/src/motion/multistep.ts";
test("x", async () => {
  const trimmer = await demoTrimmer("baseline");
  for (const [mode, airspeed] of [["clutch-closed", 0], ["clutch-closed", 16], ["clutch-closed", 28], ["clutch-open", 28]] as const) {
    const t0 = performance.now();
    const trimmed = trimmer.trim({ mode, airspeed, climbRate: 0 });
    const t1 = performance.now();
    console.log(mode, airspeed, trimmed.kind, (t1 - t0).toFixed(0), "ms", trimmed.kind === "trimmed" ? trimmed.evaluation.loads.electricPower : trimmed);
    if (trimmed.kind !== "trimmed") continue;
    const { dynamics, state } = movingFlight(trimmer.airframe, trimmed, 1e-8);
    const lin = linearise(dynamics, state);
    console.log("rates", lin.rates.map((r) => r.toExponential(1)).join(" "), "pitch", trimmed.evaluation.pitch, "roll", trimmed.evaluation.roll);
    const show = (motion: any) => (modesOf(motion) ?? []).map((m) => `${m.name}[${m.group}] ${m.real.toFixed(3)}${m.imaginary ? ` ± ${m.imaginary.toFixed(3)}i` : ""}`).join("; ");
    console.log("all   ", show(lin));
    console.log("half  ", show(linearise(dynamics, state, 0.5)));
    const following = withFollowing(lin, (s) => s.kind === "inflow");
    console.log("quasi ", following ? show(following) : "-");
    console.log("frozen", show(withHeld(lin, (s) => s.kind === "rotor-speed")));
    console.log("coupling", splitMotion(lin).coupling);
    dynamics.flap.tolerance = 1e-5;
    dynamics.flap.restart();
    const y = Float64Array.from(state);
    const integ = new MultistepIntegrator(dynamics.size, dynamics.rates);
    const rotor = trimmer.airframe.rotors[0]!;
    const s0 = rotor.sweeps;
    const t2 = performance.now();
    for (let k = 0; k < 4000; k++) integ.advance(k * 0.005, y, 0.005);
    console.log("20 s:", (performance.now() - t2).toFixed(0), "ms", integ.evaluations, "evals", rotor.sweeps - s0, "sweeps", Array.from(y.slice(0, 6)).map((x) => x.toFixed(2)).join(" "));
  }
}, 100000);
