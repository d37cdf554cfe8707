import type { ChannelOf } from "../plan/index.js";
import type { Circuit, CoachIndex, ModuleId } from "../record/index.js";
import { asksWords, circuitPlaceWords, modulePlaceWords } from "./asks.js";
import { cautionsOf } from "./cautions.js";
import type { MovedWires } from "./moved-wires.js";
import type { Test } from "./proof.js";

const YES = { said: "yes" } as const;

const test = (index: CoachIndex, circuit: Circuit, kind: "answers" | "always-fed"): Test => {
  const where = circuitPlaceWords(index, circuit);
  const cautions = cautionsOf(index, circuit);
  return {
    id: `t-${circuit.id}-${kind}`,
    circuit: circuit.id,
    ...(circuit.module === undefined ? {} : { module: circuit.module }),
    kind,
    where,
    cautions,
    asks: asksWords(kind, where, cautions),
    expected: YES,
    needs: [],
  };
};

/** Does the right load, and no other, answer on the new channel? Undefined for a circuit that was not moved. */
export const answersTest = (index: CoachIndex, circuit: Circuit, moved: MovedWires): Test | undefined =>
  moved.moves.some((move) => move.circuit === circuit.id) ? test(index, circuit, "answers") : undefined;

/** Has a load on a feed of its own power whatever button is pressed? Undefined for any other circuit. */
export const alwaysFedTest = (index: CoachIndex, circuit: Circuit, moved: MovedWires): Test | undefined =>
  moved.feeds.some((feed) => index.circuitOfLoad.get(feed.load)?.id === circuit.id)
    ? test(index, circuit, "always-fed")
    : undefined;

/** Is each channel of this module that a wire has left, and none has taken, dead? */
export function deadChannelTests(index: CoachIndex, id: ModuleId, moved: MovedWires): Test[] {
  const module = index.modules.get(id);
  if (module === undefined) return [];
  const left: ChannelOf[] = [
    ...moved.moves.map((move) => move.from),
    ...moved.feeds.flatMap((feed) => {
      const circuit = index.circuits.get(feed.circuit);
      return circuit?.module === undefined || circuit.channel === undefined
        ? []
        : [{ module: circuit.module, channel: circuit.channel }];
    }),
  ];
  const channels = [...new Set(left.filter((each) => each.module === id).map((each) => each.channel))].filter(
    (channel) => {
      const there = (index.circuitsOfModule.get(id) ?? []).find((circuit) => circuit.channel === channel);
      return there === undefined || there.isSpare === true;
    },
  );
  return channels
    .sort((a, b) => a - b)
    .map((channel) => {
      const where = `${modulePlaceWords(module)}, channel ${channel}`;
      return {
        id: `t-${id}.${channel}-channel-dead`,
        module: id,
        channel,
        kind: "channel-dead",
        where,
        asks: asksWords("channel-dead", where, []),
        expected: YES,
        needs: [],
      };
    });
}
