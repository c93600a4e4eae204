// Sample questions and the answers on record, both through the built command line: what a user types is what is held.
import { execFile } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { promisify } from "node:util";

const folder = resolve("examples");
const ending = ".inputs.json";
const masked = "masked";

/** Names of all samples: the part before the first dot is the analysis. */
export function exampleNames() {
  return readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .map((file) => file.slice(0, -ending.length))
    .sort();
}

/** @param {string} name */
export const answerFile = (name) => resolve(folder, `${name}.outputs.json`);

/** The answer on record, or undefined. @param {string} name */
export function recordedAnswer(name) {
  return existsSync(answerFile(name)) ? JSON.parse(readFileSync(answerFile(name), "utf8")) : undefined;
}

/**
 * Asks the built command line afresh and hides what differs from build to build: version, hashes, and the words about the method.
 *
 * @param {string} name
 */
export async function freshAnswer(name) {
  const command = [
    "dist/cli.mjs",
    "run",
    name.split(".")[0],
    "--input",
    resolve(folder, `${name}${ending}`),
    "--format",
    "json",
    "--no-cache",
  ];
  const result = JSON.parse(await standardOutput(command));
  const { provenance } = result;
  provenance.program.version = masked;
  provenance.registryHash = masked;
  provenance.method = masked;
  for (const document of provenance.documents) document.hash = masked;
  return result;
}

/** Status 1 says that a requirement is not met: an answer all the same. */
async function standardOutput(command) {
  try {
    return (await promisify(execFile)(process.execPath, command, { maxBuffer: 2 ** 26 })).stdout;
  } catch (error) {
    if (error.code === 1 && error.stdout) return error.stdout;
    throw error;
  }
}
