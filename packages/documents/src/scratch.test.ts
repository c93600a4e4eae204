import { test } from "vitest";
import { openProject, problemLine } from "./index.ts";

test("demo", async () => {
  const p = openProject("demo");
  console.log((await p.check()).map(problemLine).join("\n"));
  const d = await p.readDocument("aircraft/baseline.yaml");
  console.log(
    JSON.stringify(d.value?.data).slice(0, 600),
    Object.entries(d.value?.written ?? {}).slice(0, 4),
    Object.keys(d.value?.written ?? {}).length,
  );
});
