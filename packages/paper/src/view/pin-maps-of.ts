import type { Plan } from "@fusebook/core/plan";
import { type PinPlace, pinMapOf } from "@fusebook/core/procedure";
import type { CoachIndex } from "@fusebook/core/record";
import type { PinMapView } from "../packet/packet-view.js";
import { feedsOf, moduleName } from "./names.js";

const placeWords = (place: PinPlace | undefined): string =>
  place === undefined ? "not known: look at the part and write it here" : `${place.connector} pin ${place.pin}`;

const UNKNOWN_PINS =
  "Some pins are not on record. Do not guess: read them off the part or its sheet before anything is plugged in.";

/** Old pin to new pin for every replaced module whose connectors differ, in channel order, each channel with what it feeds. */
export function pinMapsOf(before: CoachIndex, after: CoachIndex, plan: Plan): PinMapView[] {
  return plan.modules.flatMap((choice): PinMapView[] => {
    const to = after.moduleKinds.get(choice.to);
    const module = before.modules.get(choice.module);
    if (!choice.isReplaced || to === undefined || module === undefined) return [];
    const from = choice.from === undefined ? undefined : before.moduleKinds.get(choice.from);
    const rows = pinMapOf(from, to);
    if (rows === undefined) return [];
    const circuits = before.circuitsOfModule.get(choice.module) ?? [];
    const nameOf = (channel: number | undefined, is: string | undefined): string => {
      if (channel === undefined) return is ?? "";
      const circuit = circuits.find((one) => one.channel === channel);
      const leaves = [
        ...plan.moves,
        ...plan.steadyFeeds.filter((feed) =>
          (before.circuits.get(feed.circuit)?.loads ?? []).every((load) =>
            plan.steadyFeeds.some((each) => each.load === load),
          ),
        ),
      ].some(({ from }) => from.module === choice.module && from.channel === channel);
      if (leaves && circuit !== undefined)
        return `${channel} ${feedsOf(before, circuit)}: leaves this channel; not by this map, by its own step`;
      return `${channel} ${circuit === undefined ? "nothing on record" : feedsOf(before, circuit)}`;
    };
    const keyed = [from, to].flatMap((kind) =>
      (kind?.connectors ?? []).flatMap((one) =>
        one.keyedAt === undefined ? [] : [`${kind?.id} ${one.name}: key at ${one.keyedAt}`],
      ),
    );
    return [
      {
        title: `${moduleName(before, module)}: ${from?.name ?? "kind not known"} to ${to.name}`,
        rows: rows.map((row) => ({
          circuit: nameOf(row.channel, row.is),
          from: placeWords(row.from),
          to: placeWords(row.to),
        })),
        note: [
          "Pins as seen from the mating face.",
          ...(keyed.length === 0 ? [] : [`${keyed.join("; ")}.`]),
          ...(rows.some((row) => row.unknown.length > 0) ? [UNKNOWN_PINS] : []),
        ].join(" "),
      },
    ];
  });
}
