import type { LoadClass } from "../record/index.js";

const LAMPS: readonly LoadClass[] = ["led-resistor", "led-linear", "led-driver", "filament"];

/** Words that labels use for a sort of load, and the classes they fit. Common practice, no source; a word that is not here says nothing. */
const SORTS: readonly { readonly sort: string; readonly word: RegExp; readonly classes: readonly LoadClass[] }[] = [
  { sort: "a lamp", word: /\b(lamps?|lights?|lites?|lts?|lighting|downlights?|reading)\b/, classes: LAMPS },
  { sort: "a pump", word: /\b(pumps?|bilge)\b/, classes: ["pump", "motor"] },
  { sort: "a fan", word: /\b(fans?|blowers?)\b/, classes: ["fan", "motor"] },
  {
    sort: "a shade or actuator",
    word: /\b(shades?|blinds?|slides?|actuators?|lifts?|steps?|locks?)\b/,
    classes: ["actuator", "motor"],
  },
  { sort: "a valve", word: /\b(valves?|solenoids?)\b/, classes: ["valve", "actuator", "relay-coil"] },
  { sort: "an outlet", word: /\b(outlets?|sockets?|usb)\b/, classes: ["outlet"] },
  {
    sort: "a heater",
    word: /\b(heaters?|furnace|heat)\b/,
    classes: ["heater-control", "resistive-heater", "relay-coil", "fan"],
  },
  {
    sort: "an inverter or generator remote",
    word: /\b(inverter|generator)\b/,
    classes: ["inverter-remote", "relay-coil"],
  },
  { sort: "a detector", word: /\b(detectors?|alarms?|smoke)\b/, classes: ["detector"] },
];

/**
 * What sorts of load does a label speak of? Several where it names several ("fan and light"). A lamp word beside another sort is read as its
 * addition, not as a contradiction.
 */
export const sortsNamed = (
  label: string,
): readonly { readonly sort: string; readonly classes: readonly LoadClass[] }[] =>
  SORTS.filter(({ word }) => word.test(label.toLowerCase()));
