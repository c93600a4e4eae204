import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

const server = process.env.WINGSEED_SERVER ?? "http://127.0.0.1:4180";

export default defineConfig({
  root: import.meta.dirname,
  // Works under any path, since the page knows only its own folder.
  base: "./",
  plugins: [react()],
  resolve: { conditions: ["source", "module", "browser", "default"] },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2023",
    cssTarget: ["chrome123", "firefox120", "safari17.5"],
    // Fonts stay files: the page's policy allows no data address for them.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { proxy: { "/api": server } },
});
