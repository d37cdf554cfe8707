import type { NetworkCoach } from "./plan-network-coach.js";

/** A coach on which the obvious plan breaks something that only the whole network shows. */
export interface NetworkCase {
  readonly name: string;
  readonly coach: NetworkCoach;
  /** What the obvious plan makes, by code and subject. */
  readonly makes: readonly [code: string, subject: string];
  /** The obvious plan: cost in cents, wires moved. */
  readonly obvious: readonly [costCents: number, wires: number];
  /** What is to be offered instead, for the same wish. */
  readonly instead: readonly [costCents: number, wires: number];
}

const R4 = { id: "R4", price: 60, onOhm: 0.001, dims: false, isObtainable: false };
const D4 = { id: "D4", price: 100, onOhm: 0.01, dims: true, isObtainable: false };

/** The least volts of each load lie between what it gets before and after, worked out by hand beside it. 60 an hour: a minute is a unit of money. */
export const NETWORK_CASES: readonly NetworkCase[] = [
  {
    // A worn relay of half an ohm kept the lamp's current down. The better contact of the cheap kind lets more through the ground that the valve shares.
    name: "a better contact draws more through a shared return: the valve gets too little",
    coach: {
      kinds: [
        { ...R4, onOhm: 0.5 },
        { ...D4, isObtainable: true },
        { id: "E4", price: 150, onOhm: 0.45, dims: true },
      ],
      modules: [
        { id: "m1", kind: "R4", node: "bus", accessMin: 5 },
        { id: "m2", kind: "R4", node: "bus", accessMin: 5, isLocked: true },
      ],
      feeders: [{ id: "k1", to: "bus", ohm: 0.001 }],
      returnOhm: 0.1,
      loads: [
        { id: "lamp", module: "m1", channel: 1, class: "filament", currentA: 6, wish: "must-dim", isShared: true },
        { id: "valve", module: "m2", channel: 3, class: "valve", currentA: 1, minV: 10.9, isShared: true },
      ],
    },
    makes: ["voltage-under-minimum", "valve"],
    obvious: [12500, 0],
    instead: [17500, 0],
  },
  {
    // The dearer kind is worse in all that the model sees, and comes into question only when the check has refused the cheap one.
    name: "the same where a circuit beside may move",
    coach: {
      kinds: [
        { ...R4, onOhm: 0.5 },
        { ...D4, isObtainable: true },
        { id: "E4", price: 150, onOhm: 0.45, dims: true },
      ],
      modules: [
        { id: "m1", kind: "R4", node: "bus", accessMin: 5 },
        { id: "m2", kind: "R4", node: "bus", accessMin: 5, isLocked: true },
      ],
      feeders: [{ id: "k1", to: "bus", ohm: 0.001 }],
      returnOhm: 0.1,
      loads: [
        { id: "lamp", module: "m1", channel: 1, class: "filament", currentA: 6, wish: "must-dim", isShared: true },
        { id: "lamp-2", module: "m1", channel: 3, class: "led-linear", currentA: 1, reach: [] },
        { id: "valve", module: "m2", channel: 1, class: "valve", currentA: 1, minV: 10.9, isShared: true },
      ],
    },
    makes: ["voltage-under-minimum", "valve"],
    obvious: [12500, 0],
    instead: [17500, 0],
  },
  {
    name: "a lamp brought to a module at the end of a long feeder takes the volts of the valve there",
    coach: {
      kinds: [R4, D4],
      modules: [
        { id: "m1", kind: "R4", node: "bus", accessMin: 5 },
        { id: "m2", kind: "D4", node: "far", accessMin: 5 },
        { id: "m3", kind: "D4", node: "bus", accessMin: 25 },
      ],
      feeders: [
        { id: "k1", to: "bus", ohm: 0.001 },
        { id: "k2", to: "far", ohm: 0.1 },
      ],
      loads: [
        {
          id: "lamp",
          module: "m1",
          channel: 1,
          class: "led-linear",
          currentA: 4,
          wish: "must-dim",
          reach: ["m2", "m3"],
        },
        { id: "valve", module: "m2", channel: 3, class: "valve", currentA: 2, minV: 11.5 },
      ],
    },
    makes: ["voltage-under-minimum", "valve"],
    obvious: [5500, 1],
    instead: [7500, 1],
  },
  {
    // By their plates 7 A on 7.5 A; but this battery stands above 13 V, and what follows the volts draws more.
    name: "a lamp brought to a feeder within its device by the plates puts it over at the volts of the coach",
    coach: {
      restV: 13.4,
      kinds: [R4, D4],
      modules: [
        { id: "m1", kind: "R4", node: "bus", accessMin: 5 },
        { id: "m2", kind: "D4", node: "far", accessMin: 5 },
        { id: "m3", kind: "D4", node: "bus", accessMin: 25 },
      ],
      feeders: [
        { id: "k1", to: "bus", ohm: 0.001 },
        { id: "k2", to: "far", ohm: 0.005, deviceA: 7.5 },
      ],
      loads: [
        {
          id: "lamp",
          module: "m1",
          channel: 1,
          class: "led-resistor",
          currentA: 3,
          wish: "must-dim",
          reach: ["m2", "m3"],
        },
        { id: "heater", module: "m2", channel: 3, class: "resistive-heater", currentA: 4 },
      ],
    },
    makes: ["feeder-over-device", "k2"],
    obvious: [5500, 1],
    instead: [7500, 1],
  },
  {
    // Each of the two lamps alone may go there.
    name: "two lamps brought to one feeder take together what neither takes alone",
    coach: {
      kinds: [R4, D4],
      modules: [
        { id: "m1", kind: "R4", node: "bus", accessMin: 5 },
        { id: "m2", kind: "D4", node: "far", accessMin: 5 },
        { id: "m3", kind: "D4", node: "bus", accessMin: 25 },
      ],
      feeders: [
        { id: "k1", to: "bus", ohm: 0.001 },
        { id: "k2", to: "far", ohm: 0.1 },
      ],
      loads: [
        {
          id: "lamp-1",
          module: "m1",
          channel: 1,
          class: "led-linear",
          currentA: 2,
          wish: "must-dim",
          reach: ["m2", "m3"],
        },
        {
          id: "lamp-2",
          module: "m1",
          channel: 2,
          class: "led-linear",
          currentA: 2,
          wish: "must-dim",
          reach: ["m2", "m3"],
        },
        { id: "valve", module: "m2", channel: 3, class: "valve", currentA: 2, minV: 11.5 },
      ],
    },
    makes: ["voltage-under-minimum", "valve"],
    obvious: [10000, 2],
    instead: [12000, 2],
  },
  {
    name: "a kind with a poor contact leaves the lamp itself under its least volts",
    coach: {
      kinds: [
        { ...R4, onOhm: 0.01 },
        { ...D4, onOhm: 0.3, isObtainable: true },
        { id: "E4", price: 150, onOhm: 0.02, dims: true },
      ],
      modules: [{ id: "m1", kind: "R4", node: "bus", accessMin: 5 }],
      feeders: [{ id: "k1", to: "bus", ohm: 0.001 }],
      loads: [{ id: "lamp", module: "m1", channel: 1, class: "led-linear", currentA: 5, minV: 11, wish: "must-dim" }],
    },
    makes: ["voltage-under-minimum", "lamp"],
    obvious: [12500, 0],
    instead: [17500, 0],
  },
];
