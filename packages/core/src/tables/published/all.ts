import { abycT912v } from "./abyc-t9-12v.js";
import { abycVdrop } from "./abyc-vdrop.js";
import { awgSolid } from "./awg-solid.js";
import { bladeColour } from "./blade-colour.js";
import { bladeTimes } from "./blade-times.js";
import { bundleMarine } from "./bundle-marine.js";
import { canFrame } from "./can-frame.js";
import { canLength } from "./can-length.js";
import { canPhys } from "./can-phys.js";
import { cartridgeTimes } from "./cartridge-times.js";
import { cfr183Engine } from "./cfr183-engine.js";
import { cfr183Ocp } from "./cfr183-ocp.js";
import { cfr183T5 } from "./cfr183-t5.js";
import { cieLstar } from "./cie-lstar.js";
import { copperConstants } from "./copper-constants.js";
import { euCaravan } from "./eu-caravan.js";
import { faaDropRules } from "./faa-drop-rules.js";
import { faaT114 } from "./faa-t11-4.js";
import { faaT119 } from "./faa-t11-9.js";
import { flickerDef } from "./flicker-def.js";
import { fuseContinuous } from "./fuse-continuous.js";
import { fuseDrop } from "./fuse-drop.js";
import { fusing } from "./fusing.js";
import { iec60228 } from "./iec60228.js";
import { iec60228Kt } from "./iec60228-kt.js";
import { ieee1789 } from "./ieee1789.js";
import { iso6722 } from "./iso6722.js";
import { iso10133 } from "./iso10133.js";
import { j1939Name } from "./j1939-name.js";
import { kValues } from "./k-values.js";
import { lampExponents } from "./lamp-exponents.js";
import { lampInrush } from "./lamp-inrush.js";
import { lifepo4 } from "./lifepo4.js";
import { necAdjust } from "./nec-adjust.js";
import { necAmbient } from "./nec-ambient.js";
import { necCh9T8 } from "./nec-ch9-t8.js";
import { necLvOcp } from "./nec-lv-ocp.js";
import { necLvRv } from "./nec-lv-rv.js";
import { ocvLead } from "./ocv-lead.js";
import { peukert } from "./peukert.js";
import { saeMinArea } from "./sae-min-area.js";
import { workedExamples } from "./worked-examples.js";

/** Every published table, in the order they are listed to the reader: conductors, ampacity, protection, withstand, light, batteries, bus, examples. */
export const ALL = [
  copperConstants,
  awgSolid,
  necCh9T8,
  iec60228,
  iec60228Kt,
  saeMinArea,
  iso6722,
  faaT119,
  necLvRv,
  necLvOcp,
  necAdjust,
  necAmbient,
  cfr183T5,
  cfr183Engine,
  bundleMarine,
  cfr183Ocp,
  abycVdrop,
  abycT912v,
  iso10133,
  bladeColour,
  bladeTimes,
  cartridgeTimes,
  fuseDrop,
  fuseContinuous,
  faaT114,
  faaDropRules,
  euCaravan,
  kValues,
  fusing,
  cieLstar,
  ieee1789,
  flickerDef,
  lampExponents,
  lampInrush,
  peukert,
  ocvLead,
  lifepo4,
  canFrame,
  canLength,
  canPhys,
  j1939Name,
  workedExamples,
] as const;

/** The id of each table, as sources name it. */
export type TableId =
  | "copper-constants"
  | "awg-solid"
  | "nec-ch9-t8"
  | "iec60228"
  | "iec60228-kt"
  | "sae-min-area"
  | "iso6722"
  | "faa-t11-9"
  | "nec-lv-rv"
  | "nec-lv-ocp"
  | "nec-adjust"
  | "nec-ambient"
  | "cfr183-t5"
  | "cfr183-engine"
  | "bundle-marine"
  | "cfr183-ocp"
  | "abyc-vdrop"
  | "abyc-t9-12v"
  | "iso10133"
  | "blade-colour"
  | "blade-times"
  | "cartridge-times"
  | "fuse-drop"
  | "fuse-continuous"
  | "faa-t11-4"
  | "faa-drop-rules"
  | "eu-caravan"
  | "k-values"
  | "fusing"
  | "cie-lstar"
  | "ieee1789"
  | "flicker-def"
  | "lamp-exponents"
  | "lamp-inrush"
  | "peukert"
  | "ocv-lead"
  | "lifepo4"
  | "can-frame"
  | "can-length"
  | "can-phys"
  | "j1939-name"
  | "worked-examples";
