import type { Basis } from "../../quantity/index.js";
import type { SurveyField } from "./fields.js";
import { plainWords } from "./words.js";

/** What a heading says: the fields it may mean, best first, and what it says of the figures below it. */
export interface HeadingMeaning {
  readonly candidates: readonly { readonly field: SurveyField; readonly confidence: number }[];
  readonly unit?: string;
  readonly basis?: Basis;
  readonly share?: "each" | "total";
}

const NUMBER = "(?: ?(?:#|no|nr|num|number|id|name))?";

/** Patterns over plain words. The surest first; a heading may match several. */
const PATTERNS: readonly (readonly [SurveyField, RegExp, number])[] = [
  ["returnLength", /\b(return|rtn|ret|ground|gnd|neg(ative)?)\b.*\b(length|len|lgth|run|distance|feet|ft)\b/, 0.9],
  ["returnGauge", /\b(return|rtn|ret|ground|gnd|neg(ative)?)\b.*\b(gauge|gage|awg|ga|wire|size)\b/, 0.9],
  [
    "return",
    /^(return|rtn|ret|ground|gnd|neg(ative)?|grounded|earth)( (at|to|point|stud|path|lands( on)?|bar))?$/,
    0.9,
  ],
  ["loopLength", /\b(round ?trip|loop|there and back|both ways|out and back)\b/, 0.9],
  ["answersTo", /\b(answers|answering|responds)\b|\bseen (at|as)\b/, 0.9],
  ["address", /\baddr(ess)?\b/, 0.85],
  ["positions", /\b(dip|dips|bank)\b|\b(switch(es)?|sw)\b ?(pos|positions?|set|settings?|bank)|^switches$/, 0.85],
  ["moduleKind", /\b(module|mod|panel|box)\b ?(type|kind|model)\b|\b(type|kind) of (module|panel)\b|^kind$/, 0.9],
  ["modulePlace", /\b(module|mod|panel|box)\b ?(loc|location|place|where|bay|is in|at)\b|^(bay|bay #)$/, 0.85],
  ["maxFuseA", /\bmax(imum)?\b.*\bfuse\b/, 0.9],
  [
    "circuit",
    new RegExp(`^(ckt|cct|crkt|circuit|cir)${NUMBER}$|^(fuse|pos) ?(#|no|nr|num|number|id|name|pos|position)$`),
    0.95,
  ],
  ["circuit", /^(#|no|nr|item|id|ref)$/, 0.5],
  ["fuseType", /\b(fuse|breaker|brkr)\b.*\b(type|kind|style)\b/, 0.95],
  ["fuseA", /^(fuse|fuze|breaker|brkr|bkr|cb)( ?(size|sz|amps?|a|rating|rated|value))*$/, 0.9],
  ["fuseA", /\b(fuse|fuze|breaker|brkr|protection)\b/, 0.65],
  ["module", new RegExp(`^(module|mod|mdl|panel|pnl|box|unit)${NUMBER}$`), 0.9],
  ["channel", new RegExp(`^(channel|chan|chnl|ch|output|out|port|slot)${NUMBER}$`), 0.9],
  ["channel", /^(position|pos)$/, 0.5],
  ["label", /\b(label|labels|labelled|labeled|sticker|marked|markings?|legend|tag)\b/, 0.85],
  ["class", /^(class|load (type|class|kind)|(type|kind) of load)$/, 0.95],
  ["class", /^type$/, 0.45],
  ["quantity", /^(qty|quan|quant|quantity|count|how many|pcs|pieces|# of.*|no of.*|number of.*)\b/, 0.9],
  ["stallA", /\bstall\b|\blocked rotor\b/, 0.9],
  ["minV", /^min(imum)? ?(v|volts|voltage)$/, 0.9],
  ["currentA", /\b(amps?|amperes|amperage|current|draw|milliamps|ma)\b|^a$/, 0.8],
  ["powerW", /\b(watts?|wattage|power)\b|^w$/, 0.85],
  ["ratedV", /\b(volts?|voltage)\b|^v$/, 0.8],
  [
    "gauge",
    /^(awg|gauge|gage|ga|wire|mm2|mm²)\b|\b(awg|gauge|gage|wire size|wire sz|wire ga|csa|cross section)\b/,
    0.85,
  ],
  ["length", /\b(length|len|lgth|run|distance|dist|one way)\b|^(feet|ft|metres|meters)$/, 0.85],
  ["insulation", /\binsulation\b|\b(temp|temperature) (class|rating)\b/, 0.85],
  ["bundle", /\bbundle(d)?\b/, 0.85],
  ["zone", /^zone$/, 0.85],
  ["wish", /\b(dim|dims|dimmed|dimming|dimmable|wish|wishes|wanted)\b/, 0.85],
  ["verified", /\b(verified|verify|checked|confirmed|proved|proven|traced)\b/, 0.85],
  ["place", /^(room|location|loc|where|place|area|compartment)\b/, 0.85],
  [
    "loads",
    /\b(feeds|fed|powers|runs to|goes to|what(?:'s| is|s)? (?:on|it|this)|description|desc|descr|function|purpose|serves|supplies|loads?|device|equipment|fixtures?)\b/,
    0.8,
  ],
  ["notes", /\b(notes?|remarks?|comments?|memo)\b/, 0.9],
  ["notes", /\b(colou?r)\b/, 0.6],
];

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/\b(mm2|mm²|sq ?mm)\b|mm²/, "mm²"],
  [/\bawg\b/, "AWG"],
  [/\bsae\b/, "SAE"],
  [/\b(ft|feet|foot)\b/, "ft"],
  [/\b(in|inch|inches)\b/, "in"],
  [/\b(m|metres?|meters)\b/, "m"],
  [/\bcm\b/, "cm"],
  [/\b(ma|milliamps)\b/, "mA"],
  [/\b(a|amps?|amperes)\b/, "A"],
  [/\b(w|watts?)\b/, "W"],
  [/\b(v|volts?)\b/, "V"],
];

const BASES: readonly (readonly [RegExp, Basis])[] = [
  [/\b(meas|measured|clamp|clamped|meter reading|read)\b/, "measured"],
  [/\b(est|estimate|estimated|approx|about|guess|guessed)\b/, "assumed"],
  [/\b(typ|typical)\b/, "typical"],
  [/\b(plate|nameplate|marked|printed)\b/, "marked"],
];

/** Reads a heading as people write them: `CKT #`, `Fuse sz`, `Length (ft)`, `Amps each (clamp)`. */
export function readHeading(heading: string): HeadingMeaning {
  const all = plainWords(heading);
  // What stands in brackets names a unit or a basis; it must not decide the field where the rest does.
  const outside = plainWords(heading.replace(/\([^)]*\)|\[[^\]]*\]/g, " "));
  const candidates: { field: SurveyField; confidence: number }[] = [];
  for (const [words, weight] of [
    [outside, 1],
    [all, 0.8],
  ] as const)
    for (const [field, pattern, confidence] of PATTERNS)
      if (words !== "" && pattern.test(words) && !candidates.some((candidate) => candidate.field === field))
        candidates.push({ field, confidence: confidence * weight });
  candidates.sort((a, b) => b.confidence - a.confidence);
  const unit = UNITS.find(([pattern]) => pattern.test(all))?.[1];
  const basis = BASES.find(([pattern]) => pattern.test(all))?.[1];
  const share =
    /\b(each|ea|per|apiece|one)\b/.test(all) && !/\bone way\b/.test(all)
      ? "each"
      : /\b(total|all|sum)\b/.test(all)
        ? "total"
        : undefined;
  return {
    candidates,
    ...(unit === undefined ? {} : { unit }),
    ...(basis === undefined ? {} : { basis }),
    ...(share === undefined ? {} : { share }),
  };
}
