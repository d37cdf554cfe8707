/**
 * Which folder may import which: the way of the data runs down these lists, and a folder may import those before it.
 * `tools/boundary.ts` reads this table; `tools/boundary.test.ts` proves on planted files that a wrong arrow is seen.
 */
export const CORE_ORDER = [
  "quantity",
  "tables",
  "record",
  "switchbank",
  "network",
  "protection",
  "dimming",
  "endurance",
  "findings",
  "doubt",
  "plan",
  "procedure",
  "bench",
  "proof",
  "trace",
] as const;

/** Core arrows that the order would allow but the design forbids: the trace never sees the bench that holds the truth. */
export const CORE_FORBIDDEN: readonly (readonly [from: string, to: string])[] = [
  ["trace", "bench"],
  ["tables", "record"],
];

/** Packages a package may import; nobody imports an app. */
export const PACKAGE_ARROWS: Readonly<Record<string, readonly string[]>> = {
  "packages/core": [],
  "packages/intake": ["core"],
  "packages/paper": ["core"],
  "packages/store": ["core"],
  "packages/solver": ["core"],
  fixtures: ["core"],
  "apps/cli": ["core", "intake", "paper", "store", "solver", "fixtures"],
  "apps/web": ["core", "intake", "paper", "store", "solver", "fixtures"],
};

/** The only outside packages each workspace may import at run time, each earned by a line in `docs/adr`. */
export const OUTSIDE: Readonly<Record<string, readonly string[]>> = {
  "packages/core": ["zod"],
  "packages/intake": ["papaparse", "read-excel-file", "fflate", "saxen"],
  "packages/paper": ["@myriaddreamin/typst.ts", "@myriaddreamin/typst-ts-web-compiler"],
  "packages/store": [],
  "packages/solver": ["highs"],
  fixtures: [],
  "apps/cli": [],
};

/** Workspaces that may use Node itself; core may not. */
export const MAY_USE_NODE = [
  "packages/intake",
  "packages/paper",
  "packages/store",
  "packages/solver",
  "fixtures",
  "apps/cli",
] as const;
