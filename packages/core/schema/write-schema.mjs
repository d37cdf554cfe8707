// Writes the published JSON Schema of the record from the built code: npm run build, then node packages/core/schema/write-schema.mjs
import { writeFileSync } from "node:fs";
import { jsonSchemaOf } from "../dist/record/index.js";

writeFileSync(new URL("./fusebook-1.schema.json", import.meta.url), `${JSON.stringify(jsonSchemaOf(), null, 2)}\n`);
