/** A blade fuse in small: its number, on the colour of its rating. */
export interface FusePatch {
  /** The rating as printed on the fuse. */
  readonly patch: string;
  readonly fill: string;
  readonly ink: string;
}

/** How a colour of the standard is printed. The names are those of the table `blade-colour`. */
const PRINTED: readonly (readonly [RegExp, string, string])[] = [
  [/black/, "#26282b", "#ffffff"],
  [/blue.?green/, "#8fcfc6", "#000000"],
  [/grey|gray/, "#b9bcbf", "#000000"],
  [/violet|purple/, "#d9c3ea", "#000000"],
  [/pink/, "#f6c6d3", "#000000"],
  [/tan/, "#e3c9a0", "#000000"],
  [/brown/, "#b98a5e", "#000000"],
  [/red/, "#f0a39b", "#000000"],
  [/blue/, "#a9c8ef", "#000000"],
  [/yellow/, "#f7e27a", "#000000"],
  [/clear|natural/, "#ffffff", "#000000"],
  [/green/, "#a6d7a2", "#000000"],
  [/orange|amber/, "#f6c080", "#000000"],
];

/** The patch of a rating; white where the rating is not known or the standard lists no colour. The number is the truth, the colour a check. */
export function fusePatch(ratedA: number | undefined, colour: string | undefined): FusePatch {
  const printed = colour === undefined ? undefined : PRINTED.find(([name]) => name.test(colour));
  return {
    patch: ratedA === undefined ? "?" : String(Number(ratedA.toFixed(2))),
    fill: printed?.[1] ?? "#ffffff",
    ink: printed?.[2] ?? "#000000",
  };
}
