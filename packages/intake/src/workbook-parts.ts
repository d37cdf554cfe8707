import { readXml } from "./read-xml.js";

/** One sheet of a workbook, in order. */
export interface SheetPart {
  readonly name: string;
  readonly isHidden: boolean;
  readonly xml: string | undefined;
}

/** How numbers of one style are to be shown: as dates, with a sign after them, as per cent. */
export interface NumberStyle {
  readonly isDate: boolean;
  readonly suffix: string;
  readonly isPercent: boolean;
}

export interface Workbook {
  readonly sheets: readonly SheetPart[];
  readonly sharedStrings: readonly string[];
  readonly styles: readonly NumberStyle[];
  readonly isFrom1904: boolean;
}

/** Where a relation of the workbook leads, as a part's path. */
const partPath = (target: string): string => {
  const path = target.startsWith("/") ? target.slice(1) : `xl/${target}`;
  const steps: string[] = [];
  for (const step of path.split("/"))
    if (step === "..") steps.pop();
    else if (step !== ".") steps.push(step);
  return steps.join("/").toLowerCase();
};

const stringsOf = (xml: string | undefined): string[] => {
  const strings: string[] = [];
  let text = "";
  let isIn = false;
  // Phonetic readings stand beside the text and are not part of it.
  let isPhonetic = false;
  readXml(xml ?? "<sst/>", {
    open(name) {
      if (name === "si") text = "";
      else if (name === "t") isIn = true;
      else if (name === "rPh") isPhonetic = true;
    },
    close(name) {
      if (name === "si") strings.push(text);
      else if (name === "t") isIn = false;
      else if (name === "rPh") isPhonetic = false;
    },
    text(part) {
      if (isIn && !isPhonetic) text += part;
    },
  });
  return strings;
};

/** Built-in formats that are dates or times (ECMA-376 part 1, 18.8.30; from memory). */
const isBuiltInDate = (id: number): boolean =>
  (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);

/** What a number format says: `0.0" A"` puts A after the number, `yyyy-mm-dd` is a date. */
const styleOf = (id: number, code: string | undefined): NumberStyle => {
  const section = (code ?? "").split(";")[0]?.replace(/\[(?!h|m|s)[^\]]*\]/gi, "") ?? "";
  const bare = section.replace(/"[^"]*"|\\.|_.|\*./g, "");
  const isDate = code === undefined ? isBuiltInDate(id) : /[dmyhs]/i.test(bare) && !/general/i.test(bare);
  const after = /[0#?](?:[^0#?]*)$/.exec(section)?.[0].slice(1) ?? "";
  const suffix = [...after.matchAll(/"([^"]*)"|\\(.)/g)].map((match) => match[1] ?? match[2] ?? "").join("");
  return { isDate, suffix: isDate ? "" : suffix, isPercent: id === 9 || id === 10 || bare.includes("%") };
};

const stylesOf = (xml: string | undefined): NumberStyle[] => {
  const codes = new Map<number, string>();
  const styles: NumberStyle[] = [];
  let isCells = false;
  readXml(xml ?? "<styleSheet/>", {
    open(name, attribute) {
      if (name === "cellXfs") isCells = true;
      else if (name === "numFmt") codes.set(Number(attribute("numFmtId")), attribute("formatCode") ?? "");
      else if (name === "xf" && isCells) {
        const id = Number(attribute("numFmtId") ?? 0);
        styles.push(styleOf(id, codes.get(id)));
      }
    },
    close(name) {
      if (name === "cellXfs") isCells = false;
    },
  });
  return styles;
};

/** Reads what a workbook says outside its sheets. */
export function workbookOf(parts: ReadonlyMap<string, string>): Workbook {
  const targets = new Map<string, string>();
  readXml(parts.get("xl/_rels/workbook.xml.rels") ?? "<Relationships/>", {
    open(name, attribute) {
      const id = attribute("Id");
      if (name === "Relationship" && id !== undefined) targets.set(id, partPath(attribute("Target") ?? ""));
    },
  });
  const sheets: SheetPart[] = [];
  let isFrom1904 = false;
  readXml(parts.get("xl/workbook.xml") ?? "<workbook/>", {
    open(name, attribute) {
      if (name === "workbookPr") isFrom1904 = /^(?:1|true)$/.test(attribute("date1904") ?? "");
      if (name !== "sheet") return;
      const state = attribute("state");
      sheets.push({
        name: attribute("name") ?? `sheet ${sheets.length + 1}`,
        isHidden: state === "hidden" || state === "veryHidden",
        xml: parts.get(targets.get(attribute("r:id") ?? "") ?? ""),
      });
    },
  });
  return {
    sheets,
    sharedStrings: stringsOf(parts.get("xl/sharedstrings.xml")),
    styles: stylesOf(parts.get("xl/styles.xml")),
    isFrom1904,
  };
}
