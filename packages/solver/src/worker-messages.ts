import type { Milp, MilpAnswer, MilpErrorCode, MilpFault, MilpProgress, MilpRequest } from "@fusebook/core/plan";
import type { HighsPlace } from "./load-highs.js";

/** What a request can carry across to a worker: all but the listeners. */
export type PlainRequest = Omit<MilpRequest, "onProgress" | "signal">;

/** From the asking side to the worker. `stopFlag` is one shared whole number: not zero means stop. */
export type ToWorker =
  | {
      readonly kind: "open";
      readonly job: number;
      readonly session: number;
      readonly milp: Milp;
      readonly place: HighsPlace;
    }
  | {
      readonly kind: "solve";
      readonly job: number;
      readonly session: number;
      readonly request: PlainRequest;
      readonly stopFlag?: Int32Array<SharedArrayBuffer>;
    }
  | { readonly kind: "close"; readonly session: number };

/** From the worker to the asking side. */
export type FromWorker =
  | { readonly kind: "opened"; readonly job: number }
  | { readonly kind: "progress"; readonly job: number; readonly progress: MilpProgress }
  | { readonly kind: "answer"; readonly job: number; readonly answer: MilpAnswer }
  | {
      readonly kind: "failed";
      readonly job: number;
      readonly code: MilpErrorCode;
      readonly message: string;
      readonly faults: readonly MilpFault[];
    };

/** The asking side's end of one worker, whatever the platform calls its parts. */
export interface WorkerEnd {
  post(message: ToWorker): void;
  /** Ends the worker's thread at once, whatever it is doing. */
  terminate(): void;
  /** Says whether somebody waits for an answer: a waiting program is kept alive, an idle worker keeps none. */
  hold(isWaitedFor: boolean): void;
}

/** Starts a worker and says where its messages, and its breaking off, are to go. */
export type SpawnWorker = (hears: {
  readonly message: (message: FromWorker) => void;
  readonly broke: (why: string) => void;
}) => WorkerEnd;
