import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";

interface Named {
  readonly name: string;
}

const registry = (await import(pathToFileURL(resolve("dist/registry.mjs")).href)) as {
  analyses: readonly Named[];
  quantityKinds: Readonly<Record<string, string>>;
};

function sources(folder: string): { path: string; text: string }[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name) && !/(^|\/)(dist|node_modules)\//.test(name))
    .map((name) => ({ path: join(folder, name), text: readFileSync(join(folder, name), "utf8") }));
}

describe("the engine is pure", () => {
  it("has no word for the world outside: each of these fails to compile", () => {
    const words = [
      "console",
      "process",
      "setTimeout",
      "performance",
      "URL",
      "TextEncoder",
      "AbortController",
      "fetch",
      "crypto",
      "WebAssembly",
    ];
    const config = ts.parseJsonConfigFileContent(
      ts.readConfigFile("packages/engine/tsconfig.json", ts.sys.readFile).config,
      ts.sys,
      resolve("packages/engine"),
    );
    const planted = resolve("packages/engine/src/planted.ts");
    const host = ts.createCompilerHost(config.options);
    const { fileExists, getSourceFile } = host;
    const text = `import "node:fs";\nexport const world = [${words.join(", ")}];\nexport const fine = Math.sqrt(2);\n`;
    host.fileExists = (name) => name === planted || fileExists.call(host, name);
    host.getSourceFile = (name, ...rest) =>
      name === planted ? ts.createSourceFile(name, text, ts.ScriptTarget.ES2023) : getSourceFile.call(host, name, ...rest);
    const program = ts.createProgram({ rootNames: [...config.fileNames, planted], options: { ...config.options, noEmit: true }, host });
    const complaints = program
      .getSemanticDiagnostics(program.getSourceFile(planted))
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, " "));
    expect(config.fileNames.length).toBeGreaterThan(20);
    for (const word of [...words, "node:fs"])
      expect(
        complaints.filter((complaint) => complaint.includes(`'${word}'`)),
        word,
      ).toHaveLength(1);
    expect(complaints).toHaveLength(words.length + 1);
  });

  const clocks = /\bDate\.now\b|\bnew Date\b|\bMath\.random\b/;

  it("knows no clock and no chance but those that are given to it", () => {
    expect("const seed = Math.random();").toMatch(clocks);
    const files = sources("packages/engine/src");
    expect(files.length).toBeGreaterThan(20);
    expect(files.filter(({ text }) => clocks.test(text)).map(({ path }) => path)).toEqual([]);
  });
});

describe("faces and the runner know no analysis by name", () => {
  const names = registry.analyses.map(({ name }) => name);
  // Words that the contract uses for something else as well: kinds of quantities, meanings of marks, documents, conditions.
  const contractWords = new Set([
    ...Object.keys(registry.quantityKinds),
    "rotor",
    "wing",
    "battery",
    "aircraft",
    "mission",
    "payload",
    "wind",
  ]);

  function namesIn(text: string): string[] {
    return names.filter((name) => {
      const literal = `["'\`]${name}["'\`]`;
      const asName = new RegExp(
        `(?:analysis|name|question)\\w*\\s*(?:===|!==|==|:|=)\\s*${literal}|(?:named|ask|run)\\(\\s*${literal}|case ${literal}:|analyses/${name}\\b`,
      );
      return contractWords.has(name) ? asName.test(text) : new RegExp(literal).test(text) || asName.test(text);
    });
  }

  it("would notice one", () => {
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(namesIn(`if (analysis.name === "${name}") special();`)).toEqual([name]);
  });

  it("holds in every source of theirs", () => {
    const files = ["apps/cli/src", "apps/server/src", "apps/web/src", "packages/runner/src"].flatMap(sources);
    expect(files.length).toBeGreaterThan(30);
    expect(files.flatMap(({ path, text }) => namesIn(text).map((name) => `${path}: ${name}`))).toEqual([]);
  });
});
