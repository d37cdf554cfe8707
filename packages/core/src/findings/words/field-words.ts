/** What a record field is called by an electrician; the last part of its path. */
const FIELDS: Readonly<Record<string, string>> = {
  accessMin: "the minutes to open the place",
  address: "the address",
  allowsPwm: "whether the maker allows PWM",
  answersTo: "the address it answers to",
  betweenWiresOhm: "the resistance between the two wires, power off",
  bitRateKbit: "the bit rate",
  channel: "the channel",
  class: "what sort of load it is",
  classBasis: "what sort of load it really is, at the load itself",
  currentA: "the current it draws",
  dimBlocks: "the dim blocks on the sheet",
  distanceFromSourceM: "the wire from the supply to the fuse",
  drawReadings: "volts across the load and its amps together, at two states of the battery",
  feedNode: "where it is fed from",
  filamentTimeConstantS: "how slowly the filament cools, from its maker",
  fusePosition: "which fuse feeds it",
  gauge: "the gauge printed on the wire",
  hasOwnSwitch: "the switch on the lamp itself",
  inputCapacitanceF: "the capacitor at the driver's input, from its maker or its print",
  insulationC: "the temperature printed on the insulation",
  internalResistanceOhm: "the battery's internal resistance",
  isolation: "what to open to make it dead",
  kind: "what kind of module it is",
  label: "the label",
  lengthM: "the length of the wire",
  loads: "what it feeds",
  maxFuseA: "the largest fuse allowed",
  maxV: "the highest voltage allowed",
  minV: "the lowest voltage it works at",
  nominalV: "the battery voltage: 12 V or 24 V",
  node: "where it connects",
  onResistanceOhm: "the resistance of one channel switched on, from its feed to its output",
  openCircuitV: "the battery voltage at rest",
  options: "the option settings on the sheet",
  output: "whether it switches by relay or dims",
  outputV: "the output voltage",
  ownSwitchKind: "the lamp's own switch: a plain contact, or touch and electronic",
  positionsFound: "how its switches stand",
  powerW: "the watts it draws",
  pwmHz: "the PWM frequency on the sheet",
  ratedA: "the rating printed on it",
  ratedDimmedA: "the dimmed rating on the sheet",
  ratedSwitchedA: "the switched rating on the sheet",
  ratedTotalA: "the rating of the whole module on the sheet",
  resistanceOhm: "its resistance, power off",
  return: "the way back",
  sectionMm2: "the section of the wire",
  stallA: "the current when it stalls",
  supplies: "what feeds the coach",
  toNextM: "the length of the trunk",
  verified: "which loads go dead when the fuse is pulled",
  what: "that both are dead when it is opened",
};

/** A field by its path, in the trade's words; the path itself where we have none. */
export function fieldWords(path: string): string {
  const cell = /(?:^|\.)unread(?:\.(.+)|\[\d+\].*)?$/.exec(path);
  if (cell !== null)
    return cell[1] === undefined
      ? "what the survey cell was meant to say"
      : `what the survey cell under "${cell[1]}" was meant to say`;
  const last = /([A-Za-z0-9]+)(\[\d+\])*$/.exec(path)?.[1] ?? path;
  return FIELDS[last] ?? path;
}
