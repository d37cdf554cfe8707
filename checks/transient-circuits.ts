/**
 * Circuits for the simulator, each written from its physics as element lines between two nodes. Nothing here comes from the code under test.
 * A node named `x...` is no wire: its volts are kelvin, rad/s or the like.
 */

const STEFAN_BOLTZMANN = 5.670374e-8;
/** Tungsten: resistance at 20 C and its rise with the temperature, OpenStax College Physics 2e, 20.3, headlight example (seen): 13.7 times at 2850 C. */
const TUNGSTEN_ALPHA = 4.5e-3;
/** Tungsten at glowing heat, from memory of handbooks: emissivity, density, mean specific heat from cold to hot. They set only how fast it warms. */
const TUNGSTEN = { emissivity: 0.33, densityKgM3: 19_300, joulePerKgK: 155, ohmMAt20C: 5.6e-8 } as const;

export interface Filament {
  readonly ratedV: number;
  readonly ratedA: number;
  /** Of the coil at rated volts; vehicle lamps glow at about 2500 to 2600 C. */
  readonly hotC: number;
}

/** What a straight wire that draws this current at these volts and this heat must be: cold resistance, hot over cold, heat it holds. */
export function filamentBody({ ratedV, ratedA, hotC }: Filament) {
  const hotK = hotC + 273.15;
  const hotOverCold = 1 + TUNGSTEN_ALPHA * (hotC - 20);
  const watt = ratedV * ratedA;
  const wattPerM2 = TUNGSTEN.emissivity * STEFAN_BOLTZMANN * hotK ** 4;
  const ohmM = TUNGSTEN.ohmMAt20C * hotOverCold;
  // Surface 2 pi r l radiates the watts; l / (pi r^2) makes the ohms: solved for r, then l.
  const radiusM = ((ohmM * watt ** 2) / (2 * Math.PI ** 2 * ratedV ** 2 * wattPerM2)) ** (1 / 3);
  const lengthM = watt / (2 * Math.PI * radiusM * wattPerM2);
  const massKg = Math.PI * radiusM ** 2 * lengthM * TUNGSTEN.densityKgM3;
  return {
    coldOhm: ratedV / ratedA / hotOverCold,
    hotOverCold,
    joulePerKelvin: massKg * TUNGSTEN.joulePerKgK,
    radiatedWPerK4: watt / (hotK ** 4 - 293.15 ** 4),
  };
}

/** Lamp between two nodes, cold at the start: its ohms follow its heat, its heat follows watts in less watts radiated (Stefan-Boltzmann). */
export function filamentLines(id: string, from: string, to: string, lamp: Filament): string[] {
  const body = filamentBody(lamp);
  const ohm = `(${body.coldOhm}*(1+${TUNGSTEN_ALPHA}*(v(x${id})-293.15)))`;
  const volts = `v(${from},${to})`;
  return [
    `B${id} ${from} ${to} I = ${volts}/${ohm}`,
    `Bh${id} 0 x${id} I = ${volts}*${volts}/${ohm} - ${body.radiatedWPerK4}*(v(x${id})^4 - 293.15^4)`,
    `C${id} x${id} 0 ${body.joulePerKelvin} IC=293.15`,
  ];
}

export interface Motor {
  readonly windingOhm: number;
  readonly windingH: number;
  /** Volts for each rad/s, and newton metres for each ampere: the same number. */
  readonly kVs: number;
  readonly inertiaKgM2: number;
  /** What its work needs, however fast it turns. */
  readonly torqueNm: number;
}

/** Permanent-magnet brush motor at rest between two nodes: winding, back-EMF, inertia, a load of steady torque that only holds back. */
export function motorLines(id: string, from: string, to: string, motor: Motor): string[] {
  const { windingOhm, windingH, kVs, inertiaKgM2, torqueNm } = motor;
  return [
    `Vm${id} ${from} m${id} 0`,
    `R${id} m${id} l${id} ${windingOhm}`,
    `L${id} l${id} e${id} ${windingH} IC=0`,
    `Be${id} e${id} ${to} V = ${kVs}*v(x${id})`,
    // Below a hundredth of a rad/s the load holds back no more than it is pushed.
    `Bt${id} 0 x${id} I = ${kVs}*i(Vm${id}) - ${torqueNm}*min(1, max(0, v(x${id})/0.01))`,
    `C${id} x${id} 0 ${inertiaKgM2} IC=0`,
  ];
}

/** A wire that also stores a field: resistance and inductance in series. */
export const wireLines = (id: string, from: string, to: string, ohm: number, henry: number): string[] => [
  `R${id} ${from} w${id} ${ohm}`,
  `L${id} w${id} ${to} ${henry} IC=0`,
];

/** Inductance of a pair of round wires side by side, H: (mu0 l / pi)(ln(d/r) + 1/4), d between centres, l one way. Textbook closed form. */
export const pairInductanceH = (lengthM: number, radiusMm: number, apartMm: number): number =>
  4e-7 * lengthM * (Math.log(apartMm / radiusMm) + 0.25);

/** Copper, ohm one way: ASTM B258 diameter of the gauge, 1/58 ohm mm2/m at 20 C (IEC 60028), 0.393 % for each kelvin, stranded 1.02 (NEC chapter 9 table 8). */
export function copperOhm(gauge: number, lengthM: number, conductorC = 20, layFactor = 1.02): number {
  const diameterMm = 0.127 * 92 ** ((36 - gauge) / 39);
  const areaMm2 = (Math.PI * diameterMm ** 2) / 4;
  return (layFactor * (1 + 0.00393 * (conductorC - 20)) * lengthM) / 58 / areaMm2;
}

export interface Driver {
  readonly farad: number;
  /** Resistance of the capacitor itself. */
  readonly esrOhm: number;
  readonly watt: number;
  readonly dropOutV: number;
}

/** Switch-mode driver between two nodes: a capacitor at its input and, behind it, a load that keeps its watts down to `dropOutV` and is out below. */
export const driverLines = (id: string, from: string, to: string, driver: Driver, startV = 0): string[] => [
  `Rs${id} ${from} c${id} ${driver.esrOhm}`,
  `C${id} c${id} ${to} ${driver.farad} IC=${startV}`,
  // Out below its drop-out, over the last hundredth of it, so that there is a slope to solve with.
  `Bd${id} c${id} ${to} I = ${driver.watt}/max(v(c${id},${to}),${driver.dropOutV}) * min(1, max(0, (v(c${id},${to})/${driver.dropOutV} - 0.99)/0.01))`,
];

/** A high-side channel switched by PWM: `onOhm` in the pulse, ten megohm between pulses, edges of `edgeS`. The pulse starts at time 0, or late by `delayS`. */
export function channelLines(
  id: string,
  from: string,
  to: string,
  channel: { onOhm: number; pwmHz: number; dutyRatio: number; edgeS: number; delayS?: number },
): string[] {
  const { onOhm, pwmHz, dutyRatio, edgeS, delayS = 0 } = channel;
  const periodS = 1 / pwmHz;
  return [
    `Vg${id} xg${id} 0 PULSE(${delayS > 0 ? "0 1" : "1 0"} ${delayS > 0 ? delayS : dutyRatio * periodS} ${edgeS} ${edgeS} ${(delayS > 0 ? dutyRatio : 1 - dutyRatio) * periodS - edgeS} ${periodS})`,
    `S${id} ${from} ${to} xg${id} 0 sw${id}`,
    `.model sw${id} SW(RON=${onOhm} ROFF=1e7 VT=0.5 VH=0)`,
  ];
}

/** LED strings on a resistor: nothing below the forward volts, then the resistor's line. */
export const ledLines = (id: string, from: string, to: string, forwardV: number, ohm: number): string[] => [
  `Bl${id} ${from} ${to} I = max(0, (v(${from},${to})-${forwardV})/${ohm})`,
];
