import type { FindingCode } from "../codes.js";
import type { Say, Speaker } from "./say.js";

/** Why a load may not, or only perhaps, be dimmed. */
const WHY: Readonly<Record<string, string>> = {
  "follows-duty": "its light follows the duty",
  "glows-down": "its filament takes it",
  "linear-regulator": "its regulator takes it",
  "stated-on-record": "the record says that it takes it",
  "statement-forbids": "its maker forbids PWM",
  "statement-unnamed": "the record says that it takes PWM, but not who says so",
  "repeated-inrush": "its driver is charged anew at every pulse",
  "own-switch": "it has a switch of its own",
  "own-switch-electronic": "it has a touch or electronic switch of its own",
  moves: "it moves",
  "opens-or-holds": "it opens or holds something",
  "signal-not-power": "it takes a signal, not power",
  "electronics-inside": "it has electronics inside",
  "anything-may-be-plugged-in": "anything may be plugged into it",
  "life-safety": "lives depend on it",
  heats: "it heats",
  "class-unknown": "nobody knows what it is",
  "wished-steady": "the owner wants it steady",
};
const why = (code: string): string => WHY[code] ?? code;

/** Why a load may or may not be dimmed, by the code of its suitability, as half a sentence: "it moves". */
export const dimmingWhy = why;

/** Said wherever a class figure from memory stood in for a driver's capacitor. */
const guess = (say: Say): string =>
  say.text("knownFrom") === "class" ? " (its capacitor is not known: class figure from memory)" : "";

const contradiction = (say: Say): string => {
  switch (say.text("why")) {
    case "":
      return "such readings";
    case "class-unknown":
      return "readings of a load of unknown sort";
    case "label-differs":
      return `${say.quantity("readA", "current")} by its readings, ${say.quantity("labelA", "current")} by its label, one piece at rated volts`;
    default:
      return say.text("because");
  }
};

export const DIMMING_WORDS = {
  "steady-load-on-dim-block": (say) => ({
    title: "A load that must stay steady sits on a dimmed channel",
    wanted: `full steady voltage for ${say.text("load")} (${why(say.text("why"))})`,
    got: say.finding.verdict === "holds" ? "it" : "a channel that may dim today",
    remedy: "Keep the dimmer at full; set the option switches so that this block only switches, power off",
  }),
  "mixed-circuit": (say) => ({
    title: "Lamps share a circuit with a load that must stay steady",
    wanted: "lamps that may dim on a circuit of their own",
    got:
      say.finding.verdict === "fails"
        ? `${say.text("steady")} beside ${say.text("dimmable")}`
        : say.text("unsure") === ""
          ? "no mixture"
          : `${say.text("unsure")}, of unknown sort`,
    remedy: "This circuit cannot dim until the steady load has a feed of its own",
  }),
  "dimmed-load-not-suited": (say) => ({
    title: "A lamp dims today that may not take it",
    wanted: `a lamp that takes PWM on ${say.text("circuit")}`,
    got: `${say.finding.verdict === "holds" ? "one" : "one that may not"}: ${why(say.text("why"))}`,
    remedy: "Fit a lamp that takes PWM, or set this block to switch only",
    whileOpen: "Ask the maker or look at the lamp; keep it at full until then",
  }),
  "dimmed-channel-over-rating": (say) => ({
    title: "Dimmed channel carries more than its dimmed rating",
    wanted: `${say.limit("current")} while dimmed`,
    got: say.got("current"),
    remedy: "Move a lamp to another channel; dimming down does not help, the pulse is as strong",
  }),
  "flicker-risk": (say) => ({
    title: "PWM slow enough to be seen as flicker",
    wanted: "PWM within the low-risk limit of flicker",
    got: `${say.quantity("pwmHz", "frequency")} on ${say.text("lamp")}, whose light swings by up to ${say.text("swingsPercent")} %${say.text("knownFrom") === "worst-case" ? " (its filter is not known: the worst case)" : say.text("knownFrom") === "class" ? " (class figure from memory)" : ""}`,
    remedy: "Tell the owner; a module with faster PWM ends it",
    whileOpen: "How far the lamp filters is not known: ask its maker",
  }),
  "wish-against-load": (say) => ({
    title: "Wished to dim, but not made for it",
    wanted: "a load that can dim, as the owner wishes",
    got: `${say.finding.verdict === "holds" ? "one" : say.finding.verdict === "open" ? "one that may not" : "one that must not"}: ${why(say.text("why"))}`,
    remedy: "Tell the owner that it stays as it is, or fit a load that can dim",
    whileOpen: "Look at the lamp and ask its maker before it is promised",
  }),
  "own-switch-on-dimmed": (say) => ({
    title: "A lamp on a dimmed channel has a touch or electronic switch of its own",
    wanted: `a plain contact, or none, in a lamp on ${say.text("circuit")}`,
    got:
      say.text("kind") === "electronic"
        ? "a touch or electronic switch, which loses its state at every pulse"
        : say.finding.verdict === "holds"
          ? "one that PWM does not upset"
          : "a switch of its own, and nobody said which sort",
    remedy: "Fit a lamp with a plain switch or none, or set this block to switch only, power off",
  }),
  "driver-inrush-over-rating": (say) => ({
    title: "Drivers take more at every pulse than the dimmed channel is rated for",
    wanted: `${say.limit("current")} in the pulse`,
    got: `${say.got("current")} at the start of every pulse${guess(say)}`,
    remedy: "Fit lamps on resistors or a driver made for PWM, or set this block to switch only",
    whileOpen: "The driver's input capacitor is not known: ask its maker; keep it at full until then",
  }),
  "driver-pulse-heating": (say) => ({
    title: "Dimmed drivers heat the fuse beyond its rating",
    wanted: `${say.limit("current")} root mean square`,
    got: `${say.got("current")}, far above the mean${guess(say)}`,
    remedy: "Fit lamps on resistors or a driver made for PWM; do not fit a larger fuse",
    whileOpen: "The driver's input capacitor is not known: ask its maker",
  }),
  "driver-stops-when-dimmed": (say) => ({
    title: "Drivers stop between the pulses when dimmed low",
    wanted: `a driver that runs on at the module's lowest duty of ${say.text("dutyPercent")} %`,
    got:
      say.finding.verdict === "holds"
        ? "one that does, and so does not dim"
        : `one that runs at most ${say.text("runsPercent")} % of the time: its light flashes with the pulses${guess(say)}`,
    remedy:
      "Tell the owner: it flashes or goes out when dimmed low; set a higher lowest step, or fit a lamp that follows the duty",
    whileOpen: "The driver's input capacitor is not known: ask its maker, or try it at the lowest step",
  }),
  "dims-not-deep": (say) => ({
    title: "At its lowest the lamp still looks bright",
    wanted: `a lowest step that looks at most ${say.text("wanted")} of 100 as bright (L*)`,
    got: `${say.text("lightness")} at the module's lowest duty of ${say.text("dutyPercent")} %`,
    remedy: "Tell the owner; a module that goes lower, or a lamp of less light, ends it",
  }),
  "class-guessed": (say) => ({
    title: "Whether it may dim rests on a guess",
    wanted: "a sort of load that somebody has looked at",
    got: say.finding.verdict === "holds" ? "one" : `${say.text("class")}, guessed from its name`,
    remedy: "Look at the load itself and set how its class is known",
  }),
  "load-readings-contradict": (say) => ({
    title: "Readings of this load contradict each other or its label",
    wanted: "readings of volts and amps that one load of its sort can give",
    got: contradiction(say),
    remedy: "Read volts and amps again, both at the load, lamp warm and at full; look whether its sort is right",
  }),
} satisfies Partial<Record<FindingCode, Speaker>>;
