import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { test } from "vitest";

test("the tables of published checks are the ones that the records make", () => {
  execFileSync(process.execPath, [fileURLToPath(new URL("../tools/validation-table.mjs", import.meta.url)), "--check"], { stdio: "pipe" });
});
