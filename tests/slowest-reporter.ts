import { mkdirSync, writeFileSync } from "node:fs";
import type { Reporter, TestCase, TestModule } from "vitest/node";

/** Prints the ten slowest tests and leaves the counts in a file for `.ci/run`. */
export default class SlowestReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const slowest = tests
      .map((test) => ({ test, duration: test.diagnostic()?.duration ?? 0 }))
      .sort((a, b) => b.duration - a.duration)
      .slice(0, 10);
    console.log("\nslowest tests");
    for (const { test, duration } of slowest) console.log(`${(duration / 1000).toFixed(2).padStart(8)} s  ${place(test)}`);
    const brokenModules = modules.filter((module) => module.errors().length > 0).length;
    const counts = {
      passed: tests.filter((test) => test.result().state === "passed").length,
      failed: tests.filter((test) => test.result().state === "failed").length + brokenModules + unhandledErrors.length,
      skipped: tests.filter((test) => test.result().state === "skipped").length,
    };
    mkdirSync("node_modules/.cache", { recursive: true });
    writeFileSync("node_modules/.cache/test-counts.json", `${JSON.stringify(counts)}\n`);
  }
}

function place(test: TestCase): string {
  return `${test.module.relativeModuleId} > ${test.fullName}`;
}
