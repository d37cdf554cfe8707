import { z } from "zod";

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;

/** Ids are short, stable and readable (`m3`, `c3.07`, `l-galley-1`), and never used again for something else. */
const id = <Brand extends string>(_brand: Brand) =>
  z
    .string()
    .regex(ID, "an id is 1 to 64 letters, digits, dots, dashes or underscores, and starts with a letter or digit")
    .brand<Brand>();

export const placeId = id("Place");
export const supplyId = id("Supply");
export const nodeId = id("Node");
export const cableId = id("Cable");
export const moduleKindId = id("ModuleKind");
export const moduleId = id("Module");
export const circuitId = id("Circuit");
export const loadId = id("Load");
export const controlId = id("Control");
export const readingId = id("Reading");
export const jobId = id("Job");
export const attachmentId = id("Attachment");
export const dimBlockId = id("DimBlock");

export type PlaceId = z.infer<typeof placeId>;
export type SupplyId = z.infer<typeof supplyId>;
export type NodeId = z.infer<typeof nodeId>;
export type CableId = z.infer<typeof cableId>;
export type ModuleKindId = z.infer<typeof moduleKindId>;
export type ModuleId = z.infer<typeof moduleId>;
export type CircuitId = z.infer<typeof circuitId>;
export type LoadId = z.infer<typeof loadId>;
export type ControlId = z.infer<typeof controlId>;
export type ReadingId = z.infer<typeof readingId>;
export type JobId = z.infer<typeof jobId>;
export type AttachmentId = z.infer<typeof attachmentId>;
export type DimBlockId = z.infer<typeof dimBlockId>;
