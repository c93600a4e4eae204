import { describe, expect, it } from "vitest";
import { sampleMission, samplePayload, sampleProblem } from "../sample-results.ts";
import { terminalReport } from "./index.ts";
import { cellWidth } from "./ink.ts";

describe("a result on a terminal", () => {
  it("gives question, sentence, table and limits, and keeps cautions apart", () => {
    const { stdout, stderr } = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, {
      conditions: "0 m above sea, 15 °C, calm",
    });
    expect(stdout).toMatchSnapshot();
    expect(stderr).toMatchSnapshot();
  });

  it("never gets wider than the terminal and names the columns it dropped", () => {
    for (const width of [60, 72, 100]) {
      const { stdout, stderr } = terminalReport(sampleMission.meta, sampleMission.result, sampleMission.view, { width });
      for (const line of `${stdout}${stderr}`.split("\n")) expect(cellWidth(line)).toBeLessThanOrEqual(width);
    }
    const { stdout } = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, { width: 60 });
    expect(stdout).toContain("Left out at this width:");
  });

  it("keeps the words and only adds control sequences with colour", () => {
    const plain = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view);
    const inked = terminalReport(samplePayload.meta, samplePayload.result, samplePayload.view, { color: true });
    expect(plain.stdout).not.toContain("\u001b");
    expect(inked.stdout).toContain("\u001b[1m");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what an escape sequence begins with
    expect(inked.stdout.replace(/\u001b\[[0-9;]*m/g, "")).toBe(plain.stdout);
  });

  it("says why a case has no answer", () => {
    const { stdout } = terminalReport(sampleProblem.meta, sampleProblem.result, sampleProblem.view);
    expect(stdout).toContain("Case 2 of 2");
    expect(stdout).toContain("No answer: At 40 kg payload the rotor stalls in hover: thrust 120 N short.");
  });
});
