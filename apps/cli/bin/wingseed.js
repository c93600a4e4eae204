#!/usr/bin/env node
await import("../../../dist/cli.mjs");
