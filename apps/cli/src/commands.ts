import type { Command } from "./command.js";
import { bank } from "./commands/bank.js";
import { check } from "./commands/check.js";
import { importCommand } from "./commands/import.js";
import { plan } from "./commands/plan.js";
import { schema } from "./commands/schema.js";
import { tables } from "./commands/tables.js";

/** Every command, in the order of the job. */
export const COMMANDS: readonly Command[] = [importCommand, check, plan, bank, tables, schema];
