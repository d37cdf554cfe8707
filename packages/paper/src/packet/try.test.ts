import { writeFileSync } from "node:fs";
import { expect, it } from "vitest";
import { loadPaperEngine } from "../index.js";
import { packetPdf } from "./packet-pdf.js";
import { smallPacket } from "./small-packet.js";

it("sets", async () => {
  const engine = await loadPaperEngine();
  const r = await packetPdf(engine, smallPacket());
  if (r.kind === "refused") console.log(r.faults);
  expect(r.kind).toBe("set");
  console.log(r.unfitLabels);
  if (r.kind === "set") writeFileSync("/tmp/hout/packet.pdf", r.pdf);
});
