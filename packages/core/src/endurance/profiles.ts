import { COMMON_PRACTICE, type Source } from "../quantity/index.js";
import type { LoadClass, LoadProfile } from "../record/index.js";

const LIGHTS: LoadClass[] = ["led-resistor", "led-linear", "led-driver", "filament"];

/** Detectors are never off, whatever else is. */
const DETECTORS = { classes: ["detector" as LoadClass] };

const AWAKE = {
  name: "awake",
  on: [
    { classes: LIGHTS, shareRatio: 0.3, dutyRatio: 0.4 },
    { classes: ["electronics" as LoadClass], shareRatio: 0.5 },
    { classes: ["outlet" as LoadClass], shareRatio: 0.1 },
    { classes: ["fan" as LoadClass], shareRatio: 0.3 },
    { classes: ["heater-control" as LoadClass], shareRatio: 0.3 },
    { classes: ["inverter-remote" as LoadClass], shareRatio: 0.1 },
    { classes: ["pump" as LoadClass], shareRatio: 0.05 },
    { classes: ["valve" as LoadClass, "relay-coil" as LoadClass], shareRatio: 0.02 },
    { classes: ["motor" as LoadClass, "actuator" as LoadClass], shareRatio: 0.003 },
    DETECTORS,
  ],
};

const ASLEEP = {
  name: "asleep",
  on: [
    { classes: LIGHTS, shareRatio: 0.05, dutyRatio: 0.15 },
    { classes: ["electronics" as LoadClass], shareRatio: 0.1 },
    { classes: ["fan" as LoadClass], shareRatio: 0.2 },
    { classes: ["heater-control" as LoadClass], shareRatio: 0.3 },
    { classes: ["pump" as LoadClass], shareRatio: 0.01 },
    DETECTORS,
  ],
};

/** Where the profiles below come from: nowhere but habit. They are data, to be changed on the record. */
export const PROFILE_SOURCE: Source = COMMON_PRACTICE;

export const PROFILE_IDS = ["evening", "night", "stored"] as const;
export type ProfileId = (typeof PROFILE_IDS)[number];

/**
 * How a coach is used on battery. Common practice, no source: three lamps in ten at a time, dimmed to four tenths where they dim; a pump three minutes in an
 * hour; a shade or awning ten seconds. `evening`: the lit hours, over and over. `night`: dusk to morning. `stored`: everything off but detectors.
 */
export const PROFILES: Readonly<Record<ProfileId, LoadProfile>> = {
  evening: { id: "evening", name: "evening", startsAtHour: 18, spans: [{ ...AWAKE, hours: 5 }] },
  night: {
    id: "night",
    name: "night, dusk to morning",
    startsAtHour: 18,
    spans: [
      { ...AWAKE, name: "evening", hours: 5 },
      { ...ASLEEP, hours: 8 },
      { ...AWAKE, name: "morning", hours: 1 },
    ],
  },
  stored: {
    id: "stored",
    name: "stored, everything off",
    startsAtHour: 0,
    spans: [{ name: "stored", hours: 24, on: [DETECTORS] }],
  },
};
