/**
 * Every finding code, by the folder its rule stands in. A rule raises exactly one code; the words are made from it in `words/`.
 * The subject of a finding is the object named after each code; where two claim the same thing, it is every one after the first in the record.
 */
export const FINDING_CODES = [
  // consistency: does the record agree with itself
  "duplicate-id", // the later object
  "dangling-reference", // the object that refers; path of the field
  "channel-claimed-twice", // circuit
  "channel-out-of-range", // circuit
  "load-claimed-twice", // load
  "load-not-fed", // load
  "wire-to-nowhere", // circuit, cable or module
  "length-not-positive", // circuit, cable or load; path of the field
  "rating-not-positive", // the object; path of the field
  "tolerance-over-value", // the object; path of the field
  "feed-without-path", // module, or plain-fuse circuit
  "cables-form-loop", // cable
  "dim-block-out-of-range", // module kind
  // address: switch banks and the two-wire network's addresses
  "duplicate-address", // module
  "address-unknown", // module
  "address-out-of-range", // module
  "address-not-as-programmed", // module
  "address-not-shown-by-switches", // module
  "bank-code-missing", // module kind
  "bank-code-faulty", // module kind
  "option-setting-unknown", // module
  "network-address-not-on-record", // "network"
  // fuse: the circuit's own device
  "fuse-over-conductor", // circuit
  "fuse-over-tail", // load
  "fuse-over-channel", // circuit
  "fuse-over-load-limit", // load
  "load-over-fuse", // circuit
  "continuous-load-over-fuse", // circuit
  "fuse-rating-nonstandard", // circuit or cable
  "fuse-type-wrong", // circuit
  // time-current: fuses against starts, shorts and each other
  "inrush-over-fuse", // circuit
  "fault-not-cleared", // circuit
  "fault-over-conductor", // circuit
  "fault-over-tail", // load
  "not-selective", // circuit, or cable of a feeder
  "interrupt-under-fault", // circuit or cable
  // conductor: feeders, their protection, returns
  "protection-missing", // cable
  "protection-far-from-source", // cable
  "feeder-device-over-conductor", // cable
  "conductor-under-minimum", // circuit
  "return-missing", // circuit
  "shared-return-poor", // ground node, or cable of the return
  "ground-resistance-high", // cable
  // totals
  "channel-over-rating", // circuit
  "relay-contact-derating", // circuit
  "module-over-rating", // module
  "feeder-over-ampacity", // cable
  "feeder-over-device", // cable
  "busbar-over-rating", // node
  // drop and voltage at the load
  "drop-over-limit", // load
  "feeder-drop-over-limit", // module
  "voltage-under-minimum", // load
  "voltage-over-maximum", // load
  "no-operating-point", // coach
  // dimming
  "steady-load-on-dim-block", // circuit
  "mixed-circuit", // circuit
  "dimmed-load-not-suited", // load
  "dimmed-channel-over-rating", // circuit
  "flicker-risk", // module
  "wish-against-load", // load
  "own-switch-on-dimmed", // load
  "driver-inrush-over-rating", // circuit
  "driver-pulse-heating", // circuit
  "driver-stops-when-dimmed", // circuit
  "dims-not-deep", // load
  "class-guessed", // load
  "load-readings-contradict", // load
  // safety
  "detector-on-switched-channel", // load
  "supply-without-isolation", // supply
  "several-supplies-one-isolation", // supply
  "bonding-under-minimum", // cable
  "module-dead", // module
  // labels
  "label-contradicts-loads", // circuit
  "label-missing", // circuit
  "spare-fuse-fitted", // circuit
  "circuit-unverified", // circuit
  // supply and the two-wire network
  "no-supply", // coach
  "supply-voltage-odd", // supply
  "termination-wrong", // "network"
  "network-too-long", // "network"
  // endurance: hours on battery
  "battery-figures-missing", // supply
  "battery-figure-impossible", // supply
  "exponent-assumed", // supply
  "profile-faulty", // coach; path of the profile
  "flat-in-storage", // coach
  "hours-below-wanted", // coach; path of the wish
  // doubt: figures that cannot be as they are written
  "figures-contradict", // circuit, cable or load
  // unknowns: figures whose absence blocks a verdict
  "fuse-rating-missing", // circuit
  "wire-gauge-missing", // circuit or cable
  "wire-length-missing", // circuit or cable
  "insulation-unknown", // circuit or cable
  "load-current-missing", // load
  "load-class-missing", // load
  "kind-missing", // module
  "kind-rating-missing", // module kind
  "nominal-voltage-assumed", // coach
  "survey-cell-unread", // circuit
  "policy-memory-figure", // coach
] as const;

export type FindingCode = (typeof FINDING_CODES)[number];
