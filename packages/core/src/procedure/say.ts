export interface StepWords {
  readonly text: string;
  readonly detail?: string;
}

/** The sentence of a step, and what stands under it; details that are not there are left out. */
export const say = (text: string, ...details: readonly (string | undefined)[]): StepWords => {
  const detail = details.filter((one) => one !== undefined && one !== "").join(" ");
  return detail === "" ? { text } : { text, detail };
};

export const sentence = (text: string): string => {
  const trimmed = text.trim();
  const whole = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
};
