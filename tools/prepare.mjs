// Builds after an install that brought the build tools; an install without them (--omit=dev) has nothing to build with.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

if (existsSync(new URL("../node_modules/typescript/package.json", import.meta.url))) {
  const built = spawnSync("npm", ["run", "build"], { stdio: "inherit", shell: process.platform === "win32" });
  process.exit(built.status ?? 1);
}
