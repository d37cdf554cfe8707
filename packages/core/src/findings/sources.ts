import type { Source } from "../quantity/index.js";

/** A limit that the part's own sheet or print gives, as somebody read it into the record. */
export const PART_SHEET: Source = {
  id: "part-sheet",
  name: "the part's own sheet or print, as read into the record",
  how: "seen",
};

/** A limit that the record's policy sets and for which it names no publication. */
export const RECORD_POLICY: Source = { id: "record-policy", name: "the record's own policy", how: "practice" };
