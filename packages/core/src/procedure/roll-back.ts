import type { StepCode } from "./step-codes.js";

const DEAD_AGAIN =
  "Take the module's fuses out, open the battery isolation and repeat the dead test before you touch anything.";
const OLD_BACK =
  "Fit the old module with its switches and fuses as in the photographs, plug its connectors as marked; the coach is then as it was found.";

/** How to go back from a step of this kind; undefined where there is nothing to undo. */
export function rollBackWords(code: StepCode): string | undefined {
  switch (code) {
    case "photograph":
    case "read-labels":
    case "note-what-is-on":
    case "tell-owner":
    case "lay-out-parts":
    case "lay-out-tools":
    case "no-supply-on-record":
    case "wait-for-capacitors":
    case "prove-meter":
    case "prove-meter-again":
    case "isolation-unknown":
    case "check-labels":
    case "keep-old-part":
    case "set-back":
    case "write-book":
    case "show-owner":
    case "no-bank":
    case "clear-away":
      return undefined;
    case "detectors-lose-feed":
      return "Leave the battery alarms in place until the coach's own detectors have been tested under power.";
    case "isolate-supply":
      return "Put it back as it was found, in the reverse order: the battery first, the charging sources last.";
    case "remote-starts-off":
      return "Set each back as it was noted, after the battery is on again.";
    case "loads-off":
      return "Set each back as it was noted at the start.";
    case "dead-test":
      return "If it is not dead, stop: a source is on that the record does not show. Touch nothing; find it and open it, then test again.";
    case "open-place":
    case "close-place":
    case "refit-covers":
      return "Close it again the way it was.";
    case "mark-connectors":
      return "Plug each connector back where its mark says.";
    case "take-fuses":
      return "Put each fuse back in the channel its slot names, with the coach still dead.";
    case "remove-module":
    case "fit-module":
    case "seat-harness":
    case "hold-feed":
    case "check-screws":
      return OLD_BACK;
    case "set-bank":
    case "set-bank-unknown":
      return "Set the switches as in the photograph taken before the work, with the module dead.";
    case "sort-fuses":
    case "change-fuse":
      return "Take the fuse that came out, kept by its channel; never fit a larger one than is named here.";
    case "label-wire":
      return "Leave the label on: it says how the wire sat.";
    case "unplug-wire":
      return "Put the wire back where its label says it sat, with the fuse that lies at its name.";
    case "move-wire":
      return "Take the wire off again, put it back on the channel where its label says it sat, with the fuse that was there, and leave the program as it is.";
    case "rewire":
      return "The old wire is still there: uncover it, put it back at both ends, and fit the fuse that was with it, no larger.";
    case "steady-feed":
      return "Take the new feed off the point it lands on and out of its holder, and put the load back on the channel its label names, with the fuse that was there.";
    case "leave-detector":
      return undefined;
    case "label-channels":
      return "Where a wire goes back, its channel gets its old label back; the photograph shows it.";
    case "change-program":
      return "Set the program back as it was noted, and leave this circuit's fuse out until its wire is back too.";
    case "energise-circuit":
    case "energise-feed":
      return "Take this fuse out at once. Before the wire is touched again, open the battery isolation and repeat the dead test.";
    case "label-module":
      return "Keep the old label until the work is signed; the photograph shows where it sat.";
    case "energise-battery":
      return "Open the battery isolation at once, then repeat the dead test.";
    case "feed-module":
    case "energise-module":
    case "energise-held":
      return DEAD_AGAIN;
    case "energise-supply":
      return "Isolate this supply again as before; the coach may stay on the battery alone.";
    case "run-tests":
    case "watch-movers":
      return "Where a test fails, take out that channel's fuse and leave it out until the cause is found.";
    case "test-detectors":
      return "Where a detector does not answer, keep people out or leave a battery alarm in its place.";
  }
}
