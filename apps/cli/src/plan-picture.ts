import type { Front } from "@fusebook/core/plan";
import { type ChartLook, frontChart } from "@fusebook/paper/charts";

/** The front as a picture: cost across, lights dimmed up, wires moved as the size of the point. */
export const frontPicture =
  (front: Front, coach: string, currency: string, chosen: string | undefined) => (look: ChartLook) =>
    frontChart(
      {
        title: `${coach}: plans that no other beats`,
        currency,
        points: front.plans.map((plan) => {
          const picks = front.picks
            .filter((pick) => pick.plan === plan.id)
            .map((pick) => pick.name.replaceAll("-", " "));
          return {
            label: picks.length > 0 ? picks.join(", ") : plan.id,
            cost: plan.costCents / 100,
            lightsDimmed: plan.dims.length,
            wiresMoved: plan.wiresMoved,
            isChosen: plan.id === chosen,
          };
        }),
      },
      look,
    );
