import { type Bank, type CoachIndex, indexRecord, type Module } from "@fusebook/core/record";
import {
  bankPositions,
  checkFound,
  evidenceOfKind,
  inferCode,
  possibleAddresses,
  readOption,
} from "@fusebook/core/switchbank";
import { bankPicture } from "../bank-picture.js";
import { columns, jsonText } from "../columns.js";
import { type Command, EXIT, flag, text, type Values } from "../command.js";
import type { Io } from "../io.js";
import { Misuse } from "../misuse.js";
import { loadRecord } from "../records.js";

/** What a lookup that may lack something says in a line. */
const said = <T>(
  outcome:
    | { kind: "known"; value: T }
    | { kind: "missing"; needs: readonly string[] }
    | { kind: "refused"; because: string },
  show: (value: T) => string,
): string =>
  outcome.kind === "known"
    ? show(outcome.value)
    : outcome.kind === "missing"
      ? `not known: needs ${outcome.needs.join(", ")}`
      : outcome.because;

const whole = (values: Values, name: string): number | undefined => {
  const given = text(values, name);
  if (given === undefined) return undefined;
  const value = Number(given);
  if (!Number.isInteger(value) || value < 0) throw new Misuse(`--${name} ${given}: wanted a whole number from 0 up`);
  return value;
};

function bankOf(index: CoachIndex, kindId: string): Bank {
  const kind = index.moduleKinds.get(kindId);
  if (kind === undefined)
    throw new Misuse(
      `--kind ${kindId}: the record has no such kind; it has ${[...index.moduleKinds.keys()].join(", ") || "none"}`,
    );
  if (kind.bank === undefined)
    throw new Misuse(
      `--kind ${kindId}: the record does not say what its bank is; add moduleKinds.bank, or infer it: --infer`,
    );
  return kind.bank;
}

function listModules(io: Io, index: CoachIndex, asJson: boolean): void {
  const rows = [...index.modules.values()].map((module: Module) => {
    const bank = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind)?.bank;
    const found = module.positionsFound;
    const check =
      bank && found !== undefined
        ? checkFound(bank, found, { address: module.answersTo ?? module.address })
        : undefined;
    return {
      module: module.id,
      name: module.name ?? module.id,
      kind: module.kind,
      address: module.address,
      answersTo: module.answersTo,
      found,
      shows: check?.shows,
      enables: check?.enables,
      verdict: check?.verdict ?? "cannot-tell",
    };
  });
  if (asJson) {
    io.out(jsonText(rows));
    return;
  }
  const heads = ["module", "kind", "address", "answers to", "found", "the row says", "so"];
  io.out(
    columns(
      [
        heads,
        ...rows.map((row) => [
          row.name,
          row.kind ?? "?",
          String(row.address ?? "?"),
          String(row.answersTo ?? "not seen"),
          row.found ?? "not read",
          row.shows === undefined ? "" : said(row.shows, (list) => `address ${list.join(" or ")}`),
          { agree: "agrees", differ: "DIFFERS", "cannot-tell": "cannot tell" }[row.verdict],
        ]),
      ],
      io.columns,
    ),
  );
}

function infer(io: Io, index: CoachIndex, kindId: string, asJson: boolean): number {
  const evidence = evidenceOfKind(index, kindId);
  if (evidence.kind !== "known")
    throw new Misuse(`${kindId}: ${said(evidence, () => "")}; read the switches of one module at least`);
  const { samples, options, addressNotSeen } = evidence.value;
  const inferred = inferCode(samples, options);
  if (inferred.kind !== "known") throw new Misuse(`${kindId}: ${said(inferred, () => "")}`);
  const { value } = inferred;
  if (asJson) {
    io.out(jsonText({ kind: kindId, samples, addressNotSeen, ...value }));
    return value.conflicts.length > 0 ? EXIT.findings : EXIT.fine;
  }
  io.out(
    `${samples.length} modules of kind ${kindId} have both a row read and an address seen; ${value.rulesText} rules fit them.`,
  );
  for (const conflict of value.conflicts)
    io.out(
      `These cannot all be true: ${conflict.names.join("; ")}. Read them again${value.suspects.length > 0 ? `, first ${value.suspects.join(" or ")}` : ""}.`,
    );
  if (value.predictions.length > 0) {
    io.out("\nWhat they say of every address (? where they differ):");
    io.out(
      columns(
        [
          ["address", "positions", ""],
          ...value.predictions
            .slice(0, 32)
            .map((each) => [
              String(each.address),
              each.positions,
              each.isSettled
                ? "settled"
                : each.open.length > 0
                  ? `open: switch ${each.open.join(", ")}`
                  : "only some rules reach it",
            ]),
        ],
        io.columns,
      ),
    );
  }
  const next = value.lookNext[0];
  if (next)
    io.out(
      `\nLook next at ${next.name}: ${next.look === "positions" ? "read its switches" : "find the address it answers to"}; about ${next.expectedRules.toFixed(1)} rules would be left.`,
    );
  if (addressNotSeen.length > 0)
    io.out(`Not used, because nobody saw which address they answer to: ${addressNotSeen.join(", ")}.`);
  return value.conflicts.length > 0 ? EXIT.findings : EXIT.fine;
}

/** Bank switches: from an address, back to an address, and the rule itself from a few modules. */
export const bank: Command = {
  name: "bank",
  usage: "RECORD [--kind KIND (--address N [--enable BLOCKS] | --positions ROW | --infer)]",
  about:
    "Works out how the small switches of a module must stand for an address and for the blocks that may dim, reads a row back, and infers the rule from the modules that were seen.",
  examples: [
    ["fusebook bank coach.fusebook.json", "every module: address, row as found, and whether they agree"],
    ["fusebook bank coach.fusebook.json --kind d8 --address 5 --enable d8-front", "how to set a new module"],
    ["fusebook bank coach.fusebook.json --kind r8 --positions 01101", "what a row says"],
    [
      "fusebook bank coach.fusebook.json --kind r8 --infer",
      "which rules fit what was seen, and which module to look at next",
    ],
  ],
  options: {
    kind: { type: "string" },
    address: { type: "string" },
    enable: { type: "string" },
    positions: { type: "string" },
    infer: { type: "boolean" },
  },
  optionHelp: {
    kind: "a module kind of the record",
    address: "the address to set",
    enable: "dim blocks to enable, by id, with commas; none where absent",
    positions: "a row as found: 1 ON, 0 OFF, ? not read",
    infer: "work the rule out from the modules seen",
  },
  minPositionals: 1,
  maxPositionals: 1,
  async run({ values, positionals, io }) {
    const index = indexRecord(await loadRecord(io, positionals[0] as string));
    const asJson = flag(values, "json");
    const kindId = text(values, "kind");
    if (kindId === undefined) {
      listModules(io, index, asJson);
      return EXIT.fine;
    }
    if (flag(values, "infer")) return infer(io, index, kindId, asJson);
    const its = bankOf(index, kindId);
    const row = text(values, "positions");
    if (row !== undefined) {
      if (!/^[01?]+$/.test(row))
        throw new Misuse(`--positions ${row}: wanted ${its.switches} signs, 1 (ON), 0 (OFF) or ? (not read)`);
      const addresses = its.address
        ? possibleAddresses(its.address, row)
        : ({ kind: "missing", needs: ["bank.address"] } as const);
      const blocks = readOption(its, row);
      if (asJson) io.out(jsonText({ kind: kindId, positions: row, addresses, blocks }));
      else
        io.out(
          `${bankPicture(row, its.onIs)}\naddress: ${said(addresses, (list) => list.join(" or "))}\nblocks that may dim: ${said(blocks, (list) => list.join(", ") || "none")}`,
        );
      return EXIT.fine;
    }
    const address = whole(values, "address");
    if (address === undefined) throw new Misuse("say --address N, --positions ROW or --infer");
    const enables = (text(values, "enable") ?? "")
      .split(",")
      .map((each) => each.trim())
      .filter(Boolean);
    const set = bankPositions(its, { address, enables });
    if (asJson) io.out(jsonText({ kind: kindId, address, enables, positions: set }));
    else if (set.kind === "known")
      io.out(
        `${bankPicture(set.value, its.onIs)}\n  Set them before power. Caution: the module may switch its loads when power returns.`,
      );
    else io.out(said(set, () => ""));
    return set.kind === "known" ? EXIT.fine : EXIT.findings;
  },
};
