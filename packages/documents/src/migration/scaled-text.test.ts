import { expect, test } from "vitest";
import { parseQuantity } from "../units/index.ts";
import { scaledText } from "./scaled-text.ts";

test.each([
  ["0.8 m", -1, "-0.8 m"],
  ["-0.8 m ± 10 %", -1, "0.8 m ± 10 %"],
  ["0.004 m2", 0.5, "0.002 m2"],
  ["0.8 m ± 3 mm", -0.5, "-0.4 m ± 1.5 mm"],
  ["uniform(0.1, 0.3 m)", -1, "uniform(-0.3 m, -0.1 m)"],
  ["triangular(1 m, 2 m, 30 dm)", 0.5, "triangular(0.5 m, 1 m, 15 dm)"],
  ["−8 deg", -1, "8 deg"],
])("%s times %s is %s", (text, factor, wanted) => {
  expect(scaledText(text, factor)).toBe(wanted);
  expect(scaledText({ value: text, source: "x" }, factor)).toEqual({ value: wanted, source: "x" });
});

test("the interval scales with the value", () => {
  const read = parseQuantity(scaledText("0.8 m ± 3 mm", -0.5) as string, "length");
  expect(read).toEqual({ kind: "quantity", value: -0.4, uncertainty: { kind: "normal", halfWidth: 0.0015 } });
});

test.each([undefined, null, "about a meter", [1], { metres: 3 }])("%s stays for the reader to complain of", (written) => {
  expect(scaledText(written, -1)).toEqual(written);
});
