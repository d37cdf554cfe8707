// The package ships no types; the part of it that is used is typed here.
// @ts-expect-error untyped package
import { Parser as UntypedParser } from "saxen";

type Decode = (text: string) => string;

interface XmlParser {
  on(event: "openTag", handler: (name: string, attributes: () => Record<string, string>, decode: Decode) => void): void;
  on(event: "closeTag", handler: (name: string) => void): void;
  on(event: "text", handler: (text: string, decode: Decode) => void): void;
  on(event: "cdata", handler: (text: string) => void): void;
  on(event: "error", handler: (error: Error) => void): void;
  parse(xml: string): void;
  stop(): void;
}

/** What a reader of one XML part wants to hear. Names come without their prefix, texts and attributes decoded. */
export interface XmlEars {
  open?(name: string, attribute: (name: string) => string | undefined): void;
  close?(name: string): void;
  text?(text: string): void;
}

const bare = (name: string): string => name.slice(name.indexOf(":") + 1);

/** Walks an XML part. Throws where it is no XML: the caller says which file. */
export function readXml(xml: string, ears: XmlEars): void {
  const parser = new (UntypedParser as new () => XmlParser)();
  let fault: Error | undefined;
  parser.on("error", (error) => {
    fault ??= error;
  });
  parser.on("openTag", (name, attributes, decode) => {
    ears.open?.(bare(name), (wanted) => {
      const value = attributes()[wanted];
      return value === undefined ? undefined : decode(value);
    });
  });
  parser.on("closeTag", (name) => ears.close?.(bare(name)));
  parser.on("text", (text, decode) => ears.text?.(decode(text)));
  parser.on("cdata", (text) => ears.text?.(text));
  parser.parse(xml);
  if (fault !== undefined) throw fault;
}
