import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["packages/**/*.test.ts", "apps/**/*.test.{ts,tsx}", "tests/**/*.test.ts", "validation/**/*.test.ts", "tools/**/*.test.ts"],
    exclude: ["**/node_modules/**", "**/dist/**"],
    globalSetup: ["tests/global-setup.ts"],
    reporters: ["default", "./tests/slowest-reporter.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
