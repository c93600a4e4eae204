import { resolve } from "node:path";
import { expect, test } from "vitest";
import { withAnalysisCommand } from "./analysis-command.ts";
import type { Place } from "./place.ts";

const registry = resolve("tests/fixtures/toy-registry.mjs");
// Only the address of the registry is asked of the place, and here the words name another one.
const place = { registryUrl: "file:///nowhere.mjs" } as Place;
const commands = ["list", "run"];
const words = (...asked: string[]) => withAnalysisCommand(place, [...asked, "--registry", registry], commands);

test("the name of any analysis of the registry is the command that asks it", async () => {
  expect(await words("pendulum", "--example")).toEqual(["run", "pendulum", "--example", "--registry", registry]);
  expect(await withAnalysisCommand(place, ["pendulum", `--registry=${registry}`], commands)).toContain("run");
});

test("commands, options and no words at all stay as they are, and need no registry", async () => {
  for (const asked of [["list"], ["run", "anything"], ["--help"], []])
    expect(await withAnalysisCommand(place, asked, commands)).toEqual(asked);
});

test("a word that is neither is told with the nearest name and the commands", async () => {
  await expect(words("pendulun")).rejects.toThrow(/"pendulun" is neither.*Did you mean pendulum\?.*list, run/);
});
