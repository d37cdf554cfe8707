#!/usr/bin/env node
import { COMMANDS } from "./commands.js";
import { realIo } from "./io.js";
import { runLine } from "./run.js";

process.stdout.on("error", (error: { code?: string }) => {
  if (error.code === "EPIPE") process.exit(0);
});
process.exitCode = await runLine(process.argv.slice(2), COMMANDS, realIo());
