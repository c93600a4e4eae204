import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { test } from "vitest";

test("the page of goals beyond the gates is the one that the records make", () => {
  execFileSync(process.execPath, [fileURLToPath(new URL("../tools/validation-goals.mjs", import.meta.url)), "--check"], { stdio: "pipe" });
});
