import { LOAD_CLASSES } from "../schema/circuit.js";
import type { LoadClass } from "../schema/types.js";
import { plainWords } from "./words.js";

/** Words that tell a class. Longer sayings first: they hide the words inside them. */
const TELLING: readonly (readonly [LoadClass, string])[] = [
  ["detector", "(?:smoke|co|carbon monoxide|propane|lp|lpg|gas) (?:detector|alarm|sensor)s?|detectors?|alarms?"],
  ["heater-control", "water heaters?|furnace|thermostats?|boiler|igniters?|ignition|air con(?:ditioner)?|a c control"],
  ["resistive-heater", "tank heaters?|heat(?:er|ing)? pads?|heated [a-z]+|defrost(?:er)?|warmer|floor heat(?:er|ing)?"],
  ["inverter-remote", "(?:inverter|generator|genset|gen)(?: (?:remote|start|control|signal))?"],
  [
    "actuator",
    "vent lids?|shades?|blinds?|awnings?|slides?|slide ?outs?|steps?|lifts?|jacks?|locks?|latch(?:es)?|actuators?",
  ],
  [
    "electronics",
    "control panels?|tv|television|radio|stereo|monitors?|cameras?|router|modem|amplifier|amp|fridge|refrigerator|antenna|displays?|clock|intercom",
  ],
  ["valve", "valves?"],
  ["fan", "fans?|blowers?|exhaust|vents?"],
  ["pump", "pumps?|macerator|bilge"],
  ["relay-coil", "relays?|solenoids?|contactors?"],
  ["outlet", "outlets?|sockets?|usb(?: ports?)?|receptacles?|12 ?v plugs?"],
  ["motor", "motors?"],
  ["filament", "halogens?|incandescents?|filaments?|xenons?|bulbs?"],
  ["led-resistor", "led (?:strips?|tapes?)|rope lights?"],
  ["led-driver", "leds?|pucks?"],
];

/** Words that say a light and not which kind. */
const LIGHT = "lights?|lts?|lgts?|lamps?|sconces?|lighting|downlights?|spots?|spotlights?";

const TELLING_WORD = new RegExp(
  `\\b(?:${[...TELLING.map(([, words], i) => `(?<w${i}>${words})`), `(?<light>${LIGHT})`].join("|")})\\b`,
  "g",
);

const LIGHT_KINDS: ReadonlySet<LoadClass> = new Set(["filament", "led-resistor", "led-driver"]);

/** Classes by the words people use for them in a class column. */
const STATED: readonly (readonly [LoadClass, RegExp])[] = [
  ["led-resistor", /^led (strip|tape|resistor|resistive|ballasted)s?$/],
  ["led-linear", /^led linear$|^linear led$/],
  ["led-driver", /^(led driver|led with driver|led switch mode|driver led)$/],
  ["filament", /^(filament|incandescent|halogen|bulb|xenon)s?$/],
  ["actuator", /^(shade|awning|slide|step|lift|actuator|shade motor|awning motor|slide motor)s?$/],
  ["relay-coil", /^(relay|relay coil|coil|solenoid)s?$/],
  ["valve", /^(valve|solenoid valve)s?$/],
  ["heater-control", /^(heater control|furnace|thermostat|heater signal|burner)s?$/],
  ["inverter-remote", /^(inverter|generator|inverter remote|generator remote|remote start)s?$/],
  ["resistive-heater", /^(heater|resistive heater|heating element|heat)s?$/],
  ["detector", /^(detector|alarm|life safety|smoke|co|propane|gas)( (detector|alarm))?s?$/],
  ["outlet", /^(outlet|socket|usb|receptacle|12 ?v outlet)s?$/],
  ["electronics", /^(electronics?|tv|radio|controller)s?$/],
  ["motor", /^motors?$/],
  ["pump", /^pumps?$/],
  ["fan", /^(fan|blower)s?$/],
];

/** A class as a person states it in a class column; undefined where it says no class, or only that it is a light. */
export function readClass(text: string): LoadClass | undefined {
  const words = plainWords(text);
  const id = words.replaceAll(" ", "-");
  return LOAD_CLASSES.find((name) => name === id) ?? STATED.find(([, pattern]) => pattern.test(words))?.[0];
}

/** A guess at a class, and the words it rests on. `mixed`: the name tells of two kinds, so nothing is guessed. */
export type ClassGuess =
  | { readonly kind: "guess"; readonly class: LoadClass; readonly because: string }
  | { readonly kind: "mixed"; readonly because: string }
  | { readonly kind: "none" };

const guessPart = (words: string): { class: LoadClass; because: string } | undefined => {
  const told: { class: LoadClass | "light"; because: string }[] = [];
  for (const match of words.matchAll(TELLING_WORD)) {
    const index = TELLING.findIndex((_, i) => match.groups?.[`w${i}`] !== undefined);
    told.push({ class: index < 0 ? "light" : (TELLING[index]?.[0] ?? "light"), because: match[0] });
  }
  const detector = told.find((item) => item.class === "detector");
  if (detector !== undefined) return { class: "detector", because: detector.because };
  const last = told.at(-1);
  if (last === undefined) return undefined;
  if (last.class !== "light") return { class: last.class, because: last.because };
  // `LED reading light`, `halogen spot`: the kind of light may stand before the light.
  const kind = told.findLast((item) => item.class !== "light" && LIGHT_KINDS.has(item.class));
  return {
    class: kind === undefined ? "led-driver" : (kind.class as LoadClass),
    because: kind?.because ?? last.because,
  };
};

/** Guesses a class from what a load is called. The last telling word wins; a detector anywhere is a detector; two kinds joined are not guessed. */
export function guessClass(name: string): ClassGuess {
  const parts = name.split(/\s*[/&+,]\s*|\s+(?:and|w\/|with)\s+/i).flatMap((part) => guessPart(plainWords(part)) ?? []);
  const detector = parts.find((part) => part.class === "detector");
  if (detector !== undefined) return { kind: "guess", ...detector };
  const last = parts.at(-1);
  if (last === undefined) return { kind: "none" };
  if (parts.some((part) => part.class !== last.class))
    return { kind: "mixed", because: parts.map((part) => part.because).join(", ") };
  return { kind: "guess", ...last };
}
