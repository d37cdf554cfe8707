import type { Finding } from "@fusebook/core/findings";
import { HOWS, type Source } from "@fusebook/core/quantity";
import { sourceOf } from "@fusebook/core/tables";
import type { SourceLine } from "../packet/packet-view.js";

const HOW_WORDS: Readonly<Record<Source["how"], string>> = {
  seen: "seen",
  computed: "worked out",
  memory: "from memory",
  practice: "no source",
};

const nameOf = (source: Source): string =>
  [source.name, source.edition ?? "", source.clause ?? ""].filter((part) => part !== "" && part !== "-").join(", ");

/** Every source a finding rests on, once each, with the questions it answered; the fuse colours' own source at the end. */
export function sourcesOf(findings: readonly Finding[], title: (finding: Finding) => string): SourceLine[] {
  const lines = new Map<string, { source: Source; uses: Set<string> }>();
  for (const finding of findings) {
    const key = `${nameOf(finding.source)}|${finding.source.how}`;
    const line = lines.get(key) ?? { source: finding.source, uses: new Set<string>() };
    line.uses.add(title(finding).toLowerCase());
    lines.set(key, line);
  }
  const order = [...HOWS, "practice"];
  const used = [...lines.values()].sort(
    (a, b) =>
      order.indexOf(a.source.how) - order.indexOf(b.source.how) || (nameOf(a.source) < nameOf(b.source) ? -1 : 1),
  );
  const colour = sourceOf("blade-colour");
  return [
    ...used.map(({ source, uses }) => ({
      name: nameOf(source),
      how: HOW_WORDS[source.how],
      for: [...uses].sort().join("; "),
    })),
    {
      name: nameOf(colour),
      how: "partly seen, mostly from memory",
      for: "colours of blade fuses; the printed number is the truth",
    },
    { name: "IEC 60617", how: "from memory", for: "symbols of battery, fuse and switch" },
  ];
}
