import type { FindingCode } from "../codes.js";
import type { Speaker } from "./say.js";

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
    got: `${say.quantity("pwmHz", "frequency")} on ${say.text("lamp")}`,
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
} satisfies Partial<Record<FindingCode, Speaker>>;
