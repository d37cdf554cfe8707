import { type EvenRamp, type KindRamps, lightnessOf } from "@fusebook/core/dimming";
import type { Outcome } from "@fusebook/core/quantity";
import { type ChartLook, type Ramp, type RampData, rampChart } from "@fusebook/paper/charts";

/** What the picture is of. */
export interface RampPicture {
  readonly title: string;
  readonly subtitle: string;
  readonly ramps: readonly { readonly label: string; readonly ramp: EvenRamp }[];
  readonly lowestDutyRatio?: number | undefined;
  /** Light goes as duty to this power for the first ramp, which even steps of duty are drawn beside. */
  readonly lightExponent: number;
}

const stepsOf = (ramp: EvenRamp): Ramp["steps"] =>
  ramp.steps.map(({ step, dutyRatio, lightness }) => ({ step, dutyRatio, lightness }));

/** The same number of steps with the duty in even steps: what a button does that knows nothing of the eye. */
function evenDuty(like: EvenRamp, exponent: number): Ramp["steps"] {
  const first = like.steps[0]?.dutyRatio ?? 0;
  const n = like.steps.length;
  return like.steps.map(({ step }, i) => {
    const dutyRatio = n < 2 ? 1 : first + ((1 - first) * i) / (n - 1);
    const seen = lightnessOf(Math.min(1, dutyRatio ** exponent));
    return { step, dutyRatio, lightness: seen.kind === "known" ? seen.value : 0 };
  });
}

/** A ramp as a picture, beside the same number of presses in even steps of duty. */
export function rampPicture(picture: RampPicture, look: ChartLook): Outcome<string> {
  const first = picture.ramps[0];
  const data: RampData = {
    title: picture.title,
    subtitle: picture.subtitle,
    ramps: [
      ...picture.ramps.map(({ label, ramp }) => ({ label, note: "equal steps of CIE 1976 L*", steps: stepsOf(ramp) })),
      ...(first === undefined
        ? []
        : [
            {
              label:
                picture.ramps.length > 1 ? "LEDs in even steps of duty, to compare" : "Even steps of duty, to compare",
              note: "looks bunched together near full",
              steps: evenDuty(first.ramp, picture.lightExponent),
            },
          ]),
    ],
    ...(picture.lowestDutyRatio === undefined
      ? {}
      : {
          lowestUsefulDuty: {
            label: "Lowest useful duty",
            dutyRatio: { lo: picture.lowestDutyRatio, hi: picture.lowestDutyRatio },
          },
        }),
    caption: ["Lightness is that of the lamp's own full light, CIE 1976 L*; the lamp is taken as the only light."],
  };
  return rampChart(data, look);
}

/** The ramps of a kind that are known, LEDs first. */
export const knownRamps = (ramps: KindRamps): RampPicture["ramps"] => [
  ...(ramps.led.kind === "known" ? [{ label: "LEDs on a resistor or linear regulator", ramp: ramps.led.value }] : []),
  ...(ramps.filament.kind === "known" ? [{ label: "Filaments", ramp: ramps.filament.value }] : []),
];
