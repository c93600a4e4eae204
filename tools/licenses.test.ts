import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
// @ts-expect-error the tools are plain modules without declarations
import { licensesText, shippedLicenses } from "./licenses.mjs";

const root = resolve(".");
const shipped = shippedLicenses(root) as readonly { name: string; license: string; texts: readonly string[] }[];
const allowed = ["MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "Zlib", "CC0-1.0", "OFL-1.1", "0BSD"];

describe("licences of what is shipped", () => {
  it("cover every library that a package of ours depends on, and no tool", () => {
    const folders = ["packages", "apps"].flatMap((part) => readdirSync(part).map((name) => join(part, name)));
    const manifests = [".", ...folders].map((folder) => JSON.parse(readFileSync(join(folder, "package.json"), "utf8")));
    const wanted = new Set(
      manifests.flatMap(({ dependencies = {} }) => Object.keys(dependencies)).filter((name) => !name.startsWith("@wingseed/")),
    );
    const names = shipped.map(({ name }) => name);
    expect(wanted.size).toBeGreaterThan(10);
    expect([...wanted].filter((name) => !names.includes(name))).toEqual([]);
    expect(names).not.toContain("vitest");
  });

  it("ask for no more than to be named", () => {
    const words = ({ license }: { license: string }) => license.replace(/[()]/g, "").split(/ AND /);
    expect(
      shipped.filter((one) => words(one).some((word) => !allowed.includes(word))).map(({ name, license }) => `${name}: ${license}`),
    ).toEqual([]);
  });

  it("are handed on as texts", () => {
    const text = licensesText(root) as string;
    for (const { name, texts } of shipped) {
      expect(text).toContain(`${name} `);
      for (const one of texts) expect(text).toContain(one);
    }
  });
});
