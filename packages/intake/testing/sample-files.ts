import { strToU8, zipSync } from "fflate";
import { expect } from "vitest";
import { type GridOutcome, readGrid } from "../src/index.js";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
export const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

export interface MadeSheet {
  readonly name: string;
  readonly data: string;
  readonly after?: string;
  readonly state?: string;
}

/** A small but whole workbook; `more` are further parts, or parts put in place of ours. */
export const workbook = (sheets: readonly MadeSheet[], more: Record<string, string | Uint8Array> = {}): Uint8Array => {
  const parts: Record<string, string | Uint8Array> = {
    "[Content_Types].xml": `${XML}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    "_rels/.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `${XML}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${sheets
      .map(
        (sheet, i) =>
          `<sheet name="${sheet.name}" sheetId="${i + 1}"${sheet.state ? ` state="${sheet.state}"` : ""} r:id="rId${i + 1}"/>`,
      )
      .join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships">${sheets
      .map(
        (_, i) =>
          `<Relationship Id="rId${i + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
      )
      .join(
        "",
      )}<Relationship Id="rId90" Type="${RELATIONS}/styles" Target="styles.xml"/><Relationship Id="rId91" Type="${RELATIONS}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    "xl/styles.xml": `${XML}<styleSheet xmlns="${MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="0.0&quot; A&quot;"/><numFmt numFmtId="165" formatCode="yyyy\\-mm\\-dd"/></numFmts><cellXfs count="4"><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="9"/></cellXfs></styleSheet>`,
    "xl/sharedStrings.xml": `${XML}<sst xmlns="${MAIN}"><si><t>Ckt</t></si><si><r><t>Lo</t></r><r><t>ad</t></r></si><si><t>caf&#233; &amp; bar lamps</t></si></sst>`,
    ...more,
  };
  sheets.forEach((sheet, i) => {
    parts[`xl/worksheets/sheet${i + 1}.xml`] ??=
      `${XML}<worksheet xmlns="${MAIN}"><sheetData>${sheet.data}</sheetData>${sheet.after ?? ""}</worksheet>`;
  });
  return zipSync(
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => [name, typeof part === "string" ? strToU8(part) : part]),
    ),
  );
};

export const text = (place: string, words: string) => `<c r="${place}" t="inlineStr"><is><t>${words}</t></is></c>`;
export const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;

export const gridFrom = async (bytes: Uint8Array, name: string) => {
  const outcome = await readGrid(bytes, name);
  if (outcome.kind === "refused") throw new Error(JSON.stringify(outcome.faults));
  return outcome.grid;
};
export const textsOf = (grid: { readonly rows: readonly (readonly { readonly text: string }[])[] }) =>
  grid.rows.map((cells) => cells.map((cell) => cell.text));

/** A refusal with a place, what is wanted and what to do. */
export const isRefused = (outcome: GridOutcome, code: string, place: string, remedy: string) => {
  expect(outcome.kind).toBe("refused");
  if (outcome.kind !== "refused") return;
  expect(outcome.faults).toHaveLength(1);
  expect(outcome.faults[0]).toMatchObject({ code, place });
  expect(outcome.faults[0]?.message).toContain(remedy);
};

export const CSV = 'Ckt,Load,Amps\r\n3-01,water pump,7.5\r\n3-02,"fan, bath",1.2\r\n';
export const ROWS = [
  ["3-01", "water pump", "7.5"],
  ["3-02", "fan, bath", "1.2"],
];
export const utf16 = (words: string, isLittle: boolean, hasMark: boolean): Uint8Array => {
  const codes = [...(hasMark ? "\uFEFF" : ""), ...words].map((letter) => letter.charCodeAt(0));
  return new Uint8Array(codes.flatMap((code) => (isLittle ? [code & 255, code >> 8] : [code >> 8, code & 255])));
};
