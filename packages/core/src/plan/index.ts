export type { Front, FuseChange, ModuleChoice, Obstacle, Plan, UnmetWish } from "./plan.js";
