// Writes the answers to the sample questions of examples/ anew, or to those named: node tools/freeze-examples.mjs [name...]
// Build first. Say in the commit why an answer has changed.
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { answerFile, exampleNames, freshAnswer } from "./frozen-examples.mjs";

const built = spawnSync(process.execPath, ["tools/ensure-built.mjs"], { stdio: "inherit" });
if (built.status !== 0) process.exit(built.status ?? 1);
const asked = process.argv.slice(2);
for (const name of exampleNames().filter((known) => asked.length === 0 || asked.includes(known))) {
  writeFileSync(answerFile(name), `${JSON.stringify(await freshAnswer(name), null, 1)}\n`);
  console.log(`examples/${name}.outputs.json`);
}
