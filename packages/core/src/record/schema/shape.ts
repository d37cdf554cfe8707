import type { z } from "zod";
import {
  attachmentId,
  cableId,
  circuitId,
  controlId,
  jobId,
  loadId,
  moduleId,
  moduleKindId,
  nodeId,
  placeId,
  readingId,
  supplyId,
} from "./ids.js";
import { coachRecord } from "./record.js";

const COLLECTION_OF_ID = new Map<unknown, string>([
  [placeId, "places"],
  [supplyId, "supplies"],
  [nodeId, "nodes"],
  [cableId, "cables"],
  [moduleKindId, "moduleKinds"],
  [moduleId, "modules"],
  [circuitId, "circuits"],
  [loadId, "loads"],
  [controlId, "controls"],
  [readingId, "readings"],
  [jobId, "jobs"],
  [attachmentId, "attachments"],
]);

/** The schema seen as a tree: enough to know where ids stand and in what order fields are written. */
export interface Shape {
  /** Field names in the schema's order, each with its shape. */
  readonly fields?: ReadonlyMap<string, Shape>;
  readonly item?: Shape;
  /** What each value of a map of names must be. */
  readonly values?: z.core.$ZodType;
  /** The collection an id here belongs to. */
  readonly idOf?: string;
}

interface Inside {
  readonly type: string;
  readonly innerType?: z.core.$ZodType;
  readonly element?: z.core.$ZodType;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly valueType?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
}

/** The shape of a schema. Branches of a union are laid over each other: the first that names a field gives its shape. */
function shapeOf(schema: z.core.$ZodType): Shape {
  const idOf = COLLECTION_OF_ID.get(schema);
  if (idOf !== undefined) return { idOf };
  const inside = schema._zod.def as unknown as Inside;
  if (inside.innerType !== undefined) return shapeOf(inside.innerType);
  if (inside.element !== undefined) return { item: shapeOf(inside.element) };
  if (inside.valueType !== undefined) return { values: inside.valueType };
  if (inside.shape !== undefined)
    return { fields: new Map(Object.entries(inside.shape).map(([name, inner]) => [name, shapeOf(inner)])) };
  if (inside.options !== undefined) {
    const branches = inside.options.map(shapeOf);
    const fields = new Map<string, Shape>();
    for (const branch of branches)
      for (const [name, inner] of branch.fields ?? []) if (!fields.has(name)) fields.set(name, inner);
    const item = branches.find((branch) => branch.item !== undefined)?.item;
    return { ...(fields.size > 0 ? { fields } : {}), ...(item === undefined ? {} : { item }) };
  }
  return {};
}

export const RECORD_SHAPE: Shape = shapeOf(coachRecord);
