import type { Endurance } from "@fusebook/core/endurance";

/** Hours as people say them: minutes below two hours, days from three days up. */
export function hoursWords(hours: number): string {
  if (!Number.isFinite(hours)) return "no end";
  if (hours < 2) return `${Math.round(hours * 60)} min`;
  if (hours >= 72) return `${Math.round(hours / 24)} days`;
  return `${hours < 10 ? hours.toFixed(1) : hours.toFixed(0)} h`;
}

/** Hours up to the horizon: beyond it nobody looked. */
export const upTo = (hours: number, horizonH: number): string =>
  hours >= horizonH ? `over ${hoursWords(horizonH)}` : hoursWords(hours);

export const percentWords = (ratio: number): string => `${Math.round(ratio * 100)} %`;

export const ampereWords = (currentA: number): string =>
  currentA === 0
    ? "0 A"
    : Math.abs(currentA) < 0.0995
      ? `${(currentA * 1000).toFixed(currentA < 0.00995 ? 1 : 0)} mA`
      : `${currentA.toFixed(2)} A`;

/** How a figure that something stood in for is known. */
export const markWords = (how: string): string =>
  how === "memory" ? "FROM MEMORY" : how === "practice" ? "common practice, no source" : how;

/** Does it last the profile once through? */
export function lastsWords({ lastsOnce, profileHours }: Endurance): string {
  const once = hoursWords(profileHours);
  return lastsOnce === "holds"
    ? `yes, ${once}`
    : lastsOnce === "fails"
      ? `no, not ${once}`
      : `open: ${once} lie between`;
}
