import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

export const ADDRESS_WORDS = {
  "duplicate-address": (say) => ({
    title: "Two modules answer to one address",
    wanted: "an address of its own",
    got: `address ${say.text("address")}${say.finding.verdict === "holds" ? "" : `, which ${say.text("first")} has`}`,
    remedy: "With the power off, look at both switch banks and set the one that is wrong",
  }),
  "address-unknown": (say) => ({
    title: "Address not known",
    isQuestion: true,
    wanted: "the address it answers to",
    got: say.finding.verdict === "holds" ? "it" : "nothing on the record",
    remedy: "Read the switch bank",
    whileOpen: "Read how its switches stand before it comes out",
  }),
  "address-out-of-range": (say) => ({
    title: "The switches cannot give this address",
    wanted: `an address from ${say.text("lowest")} to ${say.text("highest")} that the bank of ${say.text("kind")} can give`,
    got: `address ${say.text("address")}`,
    remedy: "Correct the address or the bank code",
  }),
  "address-not-as-programmed": (say) => ({
    title: "Answers to another address than programmed",
    wanted: `address ${say.text("address")}, which the program uses`,
    got: `it answers to ${say.text("answersTo")}`,
    remedy: "Set the switch bank to the address that the program uses, power off",
  }),
  "address-not-shown-by-switches": (say) => {
    const shows = say.text("shows");
    const found = say.text("found");
    return {
      title: "Switches and address do not agree",
      wanted: `switches that give address ${say.text("address")}`,
      got:
        found === ""
          ? "no word of how they stand"
          : `${found} (1 is ON)${shows === "" ? "" : `, which gives ${shows}`}${say.text("wrong") === "" ? "" : `; switch ${say.text("wrong")} stands wrong`}`,
      remedy: "Look again; if the module does answer to that address, its bank may be faulty or its kind wrong",
      whileOpen: "Read how its switches stand",
    };
  },
  "bank-code-missing": (say) => ({
    title: "Switch bank code not known",
    isQuestion: true,
    wanted: "the rule from address to switch positions",
    got: say.finding.verdict === "holds" ? "it" : "nothing on the record",
    remedy: "Copy it from the sheet",
    whileOpen:
      "Copy it from the sheet, or note the switches and addresses of a few modules and let the code be inferred",
  }),
  "bank-code-faulty": (say) => ({
    title: "Bank code cannot be followed",
    wanted: "a bank code without faults",
    got: say.finding.verdict === "holds" ? "one" : `${say.text("count")}: ${say.text("first")}`,
    remedy: "Read the sheet again",
  }),
  "option-setting-unknown": (say) => ({
    title: "Option switches say nothing that is listed",
    wanted: `a setting that the sheet of ${say.text("kind")} lists`,
    got: say.text("found") || "no word of how they stand",
    remedy: "Read the switches and the sheet again",
  }),
  "network-address-not-on-record": (say) => ({
    title: "Somebody on the network is not on the record",
    wanted: "a module on the record for every address seen",
    got:
      say.finding.verdict === "holds"
        ? `one for ${say.text("address")}`
        : `address ${say.text("address")} and no module`,
    remedy: "Look for the module or button and add it",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
