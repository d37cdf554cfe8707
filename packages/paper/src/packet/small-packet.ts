import { fusePatch } from "../drawings/fuse-patch.js";
import { DO_NOT_ENERGISE, type PacketView } from "./packet-view.js";

/** A small invented job with one of everything a packet can hold, for trying the pages. */
export const smallPacket = (): PacketView => ({
  head: { coach: "Marsh Wren", date: "2026-05-02", id: "marsh-wren-7", paper: "letter", isInvented: true },
  job: {
    title: "Make the saloon and berth lights dim",
    ownerWords: "I read in bed and the parrot wants his evening light. Could the big lamps come down a bit?",
    complaint: "Saloon, galley, berth and bath lights are either off or glaring.",
  },
  proposed: {
    statement: [
      "Replace module A by one that dims and set its bank so that channels 1 to 4 dim. Put one smaller fuse in.",
      "11 lights dim, no wire is moved, about 65 minutes.",
    ],
    modules: [
      { module: "A, saloon locker", from: "R8", to: "D8", does: "Replace; channels 1 to 4 may dim; bank 0110" },
      { module: "C, bath bay", from: "R8", to: "R8", does: "Stays as it is" },
    ],
    dims: ["Saloon ceiling", "Saloon valance", "Galley over", "Galley under"],
    unmet: [{ wish: "Bath vanity must dim", because: ["the bath fan shares its circuit, and a fan is never dimmed"] }],
  },
  estimate: {
    lines: [
      { what: "D8 module", quantity: "1", each: "$210.00", total: "$210.00" },
      { what: "Labour", quantity: "65 min", each: "$95.00 an hour", total: "$102.92" },
    ],
    totals: [
      ["Sum", "$312.92"],
      ["Tax 7 %", "$14.70"],
      ["To pay", "$327.62"],
    ],
    notes: ["The price of the 5 A fuse is not in the record and is counted as nothing."],
  },
  parts: [
    { part: "D8 module", quantity: "1", note: "spare bank card" },
    { part: "Blade fuse 5 A", quantity: "2", note: "one spare" },
  ],
  tools: [
    "Multimeter, just tried on a live battery",
    "Clamp meter for direct current",
    "Printed labels, clear tape",
    "Phone for photos",
  ],
  isolation: [
    {
      supply: "Shore line and converter",
      open: "Shore plug",
      where: "Rear bay, left",
      how: "Pull the plug; then switch the converter off",
    },
    { supply: "Solar", open: "Panel breaker", where: "Wet bay", how: "Open before the battery switch" },
    {
      supply: "House battery, 440 Ah",
      open: "Battery switch",
      where: "Battery bay",
      how: "Turn to OFF, take the key out",
    },
  ],
  sections: [
    {
      code: "prepare",
      title: "Prepare",
      steps: [
        {
          id: "s1",
          text: "Photograph module A: labels, fuses, plugs and the bank",
          cautions: [],
          expect: [],
          lamps: [],
          rollBack: "Nothing is changed yet.",
        },
      ],
    },
    {
      code: "isolate",
      title: "Make it dead",
      steps: [
        {
          id: "i1",
          text: "Read volts from each point below to battery negative",
          cautions: [
            "A solar panel makes volts whenever there is light. Opening the battery switch alone leaves it live.",
          ],
          expect: [
            { what: "Bus bar", value: "0.0 V", span: "0 to 0.1 V", unit: "V" },
            { what: "Feed of module A", value: "0.0 V", span: "0 to 0.1 V", unit: "V" },
          ],
          lamps: [],
          rollBack: "Nothing is changed yet.",
        },
      ],
    },
    {
      code: "exchange",
      title: "Exchange",
      steps: [
        {
          id: "s2",
          text: "Set the bank of the new D8 before it has power",
          detail: "Hold it as it will hang, label upright.",
          cautions: [],
          expect: [],
          lamps: [],
          rollBack: "Set it back to 0000.",
          card: 0,
        },
        {
          id: "s3",
          text: "Unplug harness 1, then harness 2; keep the fuses in their order",
          cautions: ["A stud behind the cover stays live from the inverter for a minute. Test before touching."],
          expect: [{ what: "Feed stud to battery negative", value: "0.0 V", span: "0 to 0.1 V", unit: "V" }],
          lamps: [],
          rollBack: "Plug both back; nothing else has changed.",
        },
      ],
    },
    {
      code: "energise",
      title: "Bring power back",
      steps: [
        {
          id: "s4",
          text: "Close the battery switch with every fuse of module A out",
          cautions: ["The shade can move when power returns. Keep people and fingers clear of it."],
          expect: [{ what: "Feed of module A", value: "12.6 V", span: "12.3 to 12.8 V", unit: "V" }],
          lamps: ["green steady: power and network", "red off"],
          rollBack: "Open the battery switch.",
        },
      ],
    },
  ],
  pinMaps: [
    {
      title: "Module A: R8 to D8",
      rows: [
        { circuit: "1 Saloon ceiling", from: "J1-1", to: "P2-A" },
        { circuit: "2 Saloon valance", from: "J1-2", to: "P2-B" },
      ],
      note: "Pins as seen from the mating face.",
    },
  ],
  switchCards: [
    {
      title: "Module A, saloon locker",
      subtitle: "D8, seen as it hangs, label upright",
      onIs: "up",
      switches: [
        { number: 1, printed: "1", position: "off", does: "address: counts 2 when OFF" },
        { number: 2, printed: "2", position: "on", does: "address: counts 1 when ON" },
        { number: 3, printed: "3", position: "on", does: "channels 1 to 4 may dim when ON" },
        { number: 4, printed: "4", position: "unknown", does: "no use known: leave as found" },
      ],
      gives: ["Address 3", "Channels 1 to 4 dim, 5 to 8 only switch"],
    },
  ],
  fuseChanges: [
    {
      circuit: "A7 Awning strip",
      from: fusePatch(10, "red"),
      to: fusePatch(5, "tan"),
      because: "The wire carries 7 A",
    },
  ],
  wireChanges: [
    {
      what: "Galley window shade",
      from: "C, bath bay, channel 2",
      to: "C, bath bay, channel 7",
      fuse: "5 A",
    },
  ],
  strips: [
    {
      title: "Module A, saloon locker",
      pitchMm: 19.5,
      widthMm: 18.5,
      heightMm: 12,
      labels: [
        "Saloon ceiling",
        "Saloon valance",
        "Galley over",
        "Galley under",
        "Pantry",
        "Entry step",
        "Awning strip",
        "spare",
      ].map((text, i) => ({ head: `A${i + 1} · 7.5 A`, text })),
    },
    {
      title: "Module C, bath bay",
      pitchMm: 9,
      widthMm: 9,
      heightMm: 30,
      labels: [
        "Water pump",
        "Shade front",
        "Shade berth",
        "Roof vent over the galley and the companionway",
        "Tank heater of the fresh and the grey water tanks, thermostat in the bay under the step",
        "spare",
      ].map((text, i) => ({ head: `C${i + 1} 10A`, text })),
    },
  ],
  labelWants: [{ module: "Module F, helm", why: "the sheet of its kind states no label pitch" }],
  testMethods: [
    ["voltage at the load", "Everything else off. Both probes on the load's own terminals."],
    ["dims", "Down and up from its own button, without flicker or jumps."],
  ],
  tests: [
    {
      number: "A1",
      where: "Saloon ceiling",
      cautions: [],
      lines: [
        { what: "voltage at the load", expected: "12.1 V", span: "11.8 to 12.4 V", unit: "V" },
        { what: "dims", expected: "yes", span: "", unit: "" },
      ],
    },
    {
      number: "A8",
      where: "Berth shade",
      cautions: ["It moves: keep hands and cords clear."],
      lines: [{ what: "current", expected: "3.8 A", span: "2.9 to 4.6 A", unit: "A" }],
    },
  ],
  testsNote: "",
  open: [
    {
      what: "Fuse too large for the wire: Awning strip: wanted a fuse of at most 7 A, got 10 A",
      next: "Fit the smaller fuse, or a thicker wire",
      weight: DO_NOT_ENERGISE,
      source: "NFPA 70 (NEC), 240.4(D) (seen)",
    },
    {
      what: "Wire length not known: Bath vanity: wanted the length of the wire, got none on record",
      next: "Measure the length of the wire (tape measure, about 5 min)",
      weight: "Open: a reading settles it",
      source: "common practice, no source",
    },
  ],
  notices: [
    "Mains (120 or 230 V), gas and structural work are for licensed people and are no part of this job.",
    "Smoke, carbon monoxide and gas detectors are never put on a switched channel.",
    "Local rules and the makers' own instructions win over every figure in these papers.",
  ],
  sources: [
    { name: "NFPA 70 (NEC), 240.4(D), 2023", how: "seen", for: "largest fuse on a small conductor" },
    {
      name: "ISO 8820-3, 2015, marking table",
      how: "partly from memory",
      for: "colours of blade fuses; the printed number is the truth",
    },
  ],
});
