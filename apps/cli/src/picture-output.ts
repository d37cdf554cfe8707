import type { Outcome } from "@fusebook/core/quantity";
import { CHART_THEMES, type ChartLook, type ChartTheme } from "@fusebook/paper/charts";
import { flag, type Options, text, type Values } from "./command.js";
import type { Io } from "./io.js";
import { Misuse } from "./misuse.js";

/** Options of every command that can draw a picture of its answer. */
export const PICTURE_OPTIONS: Options = {
  svg: { type: "string" },
  theme: { type: "string" },
  width: { type: "string" },
  replace: { type: "boolean" },
};

export const PICTURE_OPTION_HELP: Readonly<Record<string, string>> = {
  svg: "write the picture too (SVG; any browser shows it); - gives the picture alone",
  theme: `of the picture: ${CHART_THEMES.join(", ")}; film where absent`,
  width: "of the picture, 320 to 1600 px; 900 where absent, 390 suits a phone",
  replace: "write over a file that is there",
};

function lookOf(values: Values): ChartLook {
  const theme = text(values, "theme");
  if (theme !== undefined && !(CHART_THEMES as readonly string[]).includes(theme))
    throw new Misuse(`--theme ${theme}: wanted ${CHART_THEMES.join(", ")}`);
  const width = text(values, "width");
  const widthPx = width === undefined ? undefined : Number(width);
  if (widthPx !== undefined && !(widthPx >= 320 && widthPx <= 1600))
    throw new Misuse(`--width ${width}: wanted a width from 320 to 1600 px`);
  return {
    ...(theme === undefined ? {} : { theme: theme as ChartTheme }),
    ...(widthPx === undefined ? {} : { widthPx }),
  };
}

/**
 * Writes the picture asked for with `--svg` and gives the file's name, or undefined where none was asked. A picture that cannot be drawn is a misuse that
 * says why; with `-` the picture alone goes to standard output.
 */
export async function writePicture(
  io: Io,
  values: Values,
  draw: (look: ChartLook) => Outcome<string>,
): Promise<string | undefined> {
  const file = text(values, "svg");
  if (file === undefined) return undefined;
  if (file === "-" && flag(values, "json"))
    throw new Misuse("--svg - and --json both want standard output; name a file for the picture");
  const drawn = draw(lookOf(values));
  if (drawn.kind === "missing") throw new Misuse(`--svg ${file}: nothing to draw; it needs ${drawn.needs.join(", ")}`);
  if (drawn.kind === "refused") throw new Misuse(`--svg ${file}: ${drawn.because} [${drawn.code}]`);
  await io.write(file, drawn.value, flag(values, "replace"));
  return file;
}
