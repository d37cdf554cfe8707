import type { Source } from "../../quantity/index.js";

const HOW: Readonly<Record<Source["how"], string>> = {
  seen: "seen",
  computed: "worked out",
  memory: "from memory",
  practice: "",
};

/** Where a limit comes from, in one line: name, edition, clause, and whether the text was seen. */
export function sourceWords(source: Source): string {
  const place = [source.name, source.edition === undefined ? "" : `edition ${source.edition}`, source.clause ?? ""];
  const words = place.filter((part) => part !== "" && part !== "-").join(", ");
  return HOW[source.how] === "" ? words : `${words} (${HOW[source.how]})`;
}
