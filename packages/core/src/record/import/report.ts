import type { RecordChange } from "../difference.js";
import type { LoadClass } from "../schema/types.js";

/** A cell that did not become a field, kept as text. */
export interface UnreadCell {
  /** The row's key, or its place where it has none. */
  readonly row: string;
  readonly column: string;
  readonly place: string;
  readonly text: string;
  /** `blank`: the cell says that there is nothing; `unmapped`: its column means nothing to us; else why it could not be read. */
  readonly code: string;
  readonly why: string;
}

/** Something the import did that a person should know. */
export interface Told {
  readonly place: string;
  readonly code:
    | "module-carried-down"
    | "ditto"
    | "one-piece-taken"
    | "unit-taken"
    | "duplicate-row"
    | "row-without-key"
    | "record-knows-better"
    | "load-kept"
    | "class-mixed"
    | "name-from-label";
  readonly message: string;
}

export interface ProposedClass {
  readonly load: string;
  readonly name: string;
  readonly class: LoadClass;
  /** The words it was guessed from. */
  readonly because: string;
  readonly place: string;
}

/** What an import did. */
export interface ImportReport {
  readonly rows: number;
  readonly circuits: number;
  readonly unread: readonly UnreadCell[];
  readonly proposedClasses: readonly ProposedClass[];
  readonly told: readonly Told[];
  /** From the record given to the record returned; empty when the same survey is imported again. */
  readonly changes: readonly RecordChange[];
}
