/** What a test reads off a picture: its words with their places, in a reader of its own that shares nothing with the drawing code. */
export interface SvgWords {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly sizePx: number;
  readonly anchor: string;
  readonly isStrong: boolean;
}

const attribute = (tag: string, name: string): string | undefined => new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];

const ENTITIES: Readonly<Record<string, string>> = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&amp;": "&" };
const plain = (text: string): string => text.replace(/&(?:lt|gt|quot|amp);/g, (entity) => ENTITIES[entity]!);

export const svgWords = (svg: string): SvgWords[] =>
  [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, tag = "", text = ""]) => ({
    text: plain(text),
    x: Number(attribute(tag, "x")),
    y: Number(attribute(tag, "y")),
    sizePx: Number(attribute(tag, "font-size")),
    anchor: attribute(tag, "text-anchor") ?? "start",
    isStrong: attribute(tag, "font-weight") === "700",
  }));

export const svgSize = (svg: string): { widthPx: number; heightPx: number } => {
  const [widthPx = Number.NaN, heightPx = Number.NaN] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [])
    .slice(1)
    .map(Number);
  return { widthPx, heightPx };
};

export const svgSaid = (svg: string, tag: "title" | "desc"): string =>
  plain(new RegExp(`<${tag}[^>]*>([^<]*)</${tag}>`).exec(svg)?.[1] ?? "");

/** What is wrong with the text as XML (tags that do not close, bare ampersands), and any number that is none. */
export function svgFaults(svg: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  for (const [tag, name = ""] of svg.matchAll(/<\/?([a-zA-Z]+)(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g)) {
    if (tag.startsWith("</")) {
      if (open.pop() !== name) faults.push(`${tag} closes nothing`);
    } else if (!tag.endsWith("/>")) open.push(name);
  }
  faults.push(...open.map((name) => `<${name}> is not closed`));
  const rest = svg.replace(/<\/?([a-zA-Z]+)(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g, "");
  if (/[<>]/.test(rest)) faults.push(`a sign left bare: ${/.{0,30}[<>].{0,30}/.exec(rest)?.[0]}`);
  if (/&(?!(?:lt|gt|quot|amp);)/.test(svg)) faults.push("a bare ampersand");
  for (const [value] of svg.matchAll(/="[^"]*(?:NaN|Infinity|undefined)[^"]*"/g)) faults.push(`not a number: ${value}`);
  for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g))
    if (!svg.includes(`id="${id}"`)) faults.push(`nothing has the id ${id}`);
  return faults;
}
