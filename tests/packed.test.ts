import { resolve } from "node:path";
import { expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { checkPack } from "../tools/check-pack.mjs";

interface Packed {
  readonly tarballBytes: number;
  readonly list: string;
  readonly result: { readonly cases: readonly { readonly outputs?: { readonly density: number } }[] };
}

it("the packed package answers in an empty folder", { timeout: 180_000 }, () => {
  const { tarballBytes, list, result } = checkPack(resolve(".")) as Packed;
  expect(list).toMatch(/^atmosphere +\S/m);
  // Only whether it answers there; the value itself is held against its source elsewhere.
  expect(result.cases[0]?.outputs?.density).toBeGreaterThan(0.9);
  expect(tarballBytes).toBeLessThan(10e6);
});
