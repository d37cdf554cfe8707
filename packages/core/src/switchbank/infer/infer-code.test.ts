import { describe, expect, it } from "vitest";
import { inferCode } from "./infer-code.js";
import type { Inference, InferOptions, Sample } from "./inference.js";

const infer = (samples: readonly Sample[], options: InferOptions): Inference => {
  const outcome = inferCode(samples, options);
  if (outcome.kind !== "known") throw new Error(JSON.stringify(outcome));
  return outcome.value;
};

describe("inferCode", () => {
  it("settles four switches with unlike weights and polarity from three well-chosen modules", () => {
    // By hand, from address 1: switches 1 to 4 carry 4, 1, 8, 2; switches 2 and 3 count when OFF. Coded value is the address less 1.
    // Values 1 (0001), 2 (0010), 4 (0100): rows are switch 1 = weight 4, switch 2 = not weight 1, switch 3 = not weight 8, switch 4 = weight 2.
    const got = infer(
      [
        { address: 2, positions: "0010" },
        { address: 3, positions: "0111" },
        { address: 5, positions: "1110" },
      ],
      { switches: 4, firstAddresses: [1], codings: ["binary"], counting: [4] },
    );
    expect(got.rules).toBe(1);
    expect(got.listed[0]).toEqual({
      kind: "weights",
      coding: "binary",
      firstAddress: 1,
      switches: [
        { switch: 2, weight: 1, onMeans: 0 },
        { switch: 4, weight: 2, onMeans: 1 },
        { switch: 1, weight: 4, onMeans: 1 },
        { switch: 3, weight: 8, onMeans: 0 },
      ],
    });
    expect(got.predictions.every((each) => each.isSettled)).toBe(true);
    // Address 12 is 11 = 8 + 2 + 1: 0 0 0 1.
    expect(got.predictions.find((each) => each.address === 12)?.positions).toBe("0001");
    expect(got.lookNext).toEqual([]);
  });

  it("counts exactly with nothing seen: 8! x 2^8 orders and polarities for eight binary switches from 0", () => {
    const got = infer([], { switches: 8, firstAddresses: [0], codings: ["binary"], counting: [8] });
    expect(got.rules).toBe(40_320 * 256);
    expect(got.isListComplete).toBe(false);
    expect(got.listed).toHaveLength(24);
    expect(got.simplest?.switches).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((number, i) => ({ switch: number, weight: 2 ** i, onMeans: 1 })),
    );
  });

  it("gives the exact count as text where it is beyond 2^53: 16! x 2^16", () => {
    const got = infer([], { switches: 16, firstAddresses: [0], codings: ["binary"], counting: [16], listAtMost: 1 });
    // 16! = 20 922 789 888 000, times 65 536.
    expect(got.rulesText).toBe("1371195958099968000");
  });

  it("says which addresses are settled while others are open", () => {
    // Only the switch for weight 1 is told apart (values 0 and 1); the other three stand alike in both rows.
    const got = infer(
      [
        { address: 0, positions: "0000" },
        { address: 1, positions: "0100" },
      ],
      { switches: 4, firstAddresses: [0], codings: ["binary"], counting: [4] },
    );
    expect(got.rules).toBe(6);
    expect(got.predictions.filter((each) => each.isSettled).map((each) => each.address)).toEqual([0, 1, 14, 15]);
    expect(got.predictions[2]).toEqual({
      address: 2,
      positions: "?0??",
      open: [1, 3, 4],
      reachedBy: "all",
      isSettled: false,
    });
  });

  it("says to read the module that leaves the fewest rules: one that parts three alike switches before one that parts none", () => {
    const got = infer(
      [
        { address: 0, positions: "0000" },
        { address: 1, positions: "0100" },
      ],
      {
        switches: 4,
        firstAddresses: [0],
        codings: ["binary"],
        counting: [4],
        installed: [
          { name: "settled already", address: 14 },
          { name: "one of three", address: 2 },
          { name: "row known", positions: "1000" },
        ],
      },
    );
    // Six orders of weights 2, 4, 8 on switches 1, 3, 4. Value 2: the one that is ON of the three carries 2: two rules left, whichever it is.
    // Row 1000: switch 1 carries 2, 4 or 8: two rules left too.
    expect(got.lookNext).toEqual([
      { name: "one of three", look: "positions", expectedRules: 2, isExact: true },
      { name: "row known", look: "address", expectedRules: 2, isExact: true },
    ]);
  });

  it("takes an installed module's address as proof that the code can give it", () => {
    const options = { switches: 4, firstAddresses: [0, 1], codings: ["binary" as const] };
    const got = infer([], { ...options, installed: [{ name: "m9", address: 16 }] });
    // Only a code from 1 on all four switches reaches 16.
    expect(got.families.map((each) => [each.firstAddress, each.counting])).toEqual([[1, 4]]);
  });

  it("names two modules with one row and different addresses as the smallest contradiction", () => {
    const got = infer(
      [
        { address: 0, positions: "0000", name: "fore" },
        { address: 3, positions: "1100", name: "galley" },
        { address: 5, positions: "1100", name: "aft" },
        { address: 1, positions: "1000", name: "bath" },
        { address: 2, positions: "0100", name: "berth" },
      ],
      { switches: 4, firstAddresses: [0], codings: ["binary"], counting: [4] },
    );
    expect(got.rules).toBe(0);
    expect(got.conflicts[0]).toEqual({ names: ["galley", "aft"], at: [1, 2] });
    // Without galley, 2 still needs switch 2 for weight 2, which 5 does not have; without aft, 3 is 1 and 2 together.
    expect(got.suspects).toEqual(["aft"]);
    expect(got.simplest).toBeUndefined();
  });

  it("refuses rows that cannot be rows and options that allow no rule", () => {
    const codeOf = (samples: Sample[], options: InferOptions) => {
      const outcome = inferCode(samples, options);
      return outcome.kind === "refused" ? outcome.code : outcome.kind;
    };
    expect(codeOf([{ address: 0, positions: "010" }], { switches: 4 })).toBe("positions-unreadable");
    expect(codeOf([{ address: 0, positions: "01x0" }], { switches: 4 })).toBe("positions-unreadable");
    expect(codeOf([{ address: -1, positions: "0100" }], { switches: 4 })).toBe("address-unreadable");
    expect(codeOf([], { switches: 0 })).toBe("switches-out-of-range");
    expect(codeOf([], { switches: 17 })).toBe("switches-out-of-range");
    expect(codeOf([], { switches: 4, maxAddress: 400 })).toBe("no-rule-possible");
  });
});
