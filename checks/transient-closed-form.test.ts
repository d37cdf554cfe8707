import { beforeAll, describe, expect, it } from "vitest";
import { Simulator } from "./transient-simulator.js";

/**
 * Is the runner to be trusted? The expected values are textbook closed forms, worked out here. The tolerance is the simulator's own: `reltol` 1e-5 with
 * steps of a two-hundredth of the time constant, whose trapezoidal error is (1/200)^2 / 12 = 2e-6 of the swing for each time constant.
 */
const RELATIVE = 1e-4;

const simulator = new Simulator();
beforeAll(() => simulator.start());

const worstOf = (got: readonly number[], timeS: readonly number[], wanted: (t: number) => number, scale: number) =>
  got.reduce((worst, one, k) => Math.max(worst, Math.abs(one - wanted(timeS[k]!)) / scale), 0);

describe("the transient runner against closed forms", () => {
  it("a capacitor charged through a resistor follows E (1 - exp(-t/RC)), and its joule integral is E^2 C / (2 R)", async () => {
    const [emfV, ohm, farad] = [12.7, 0.15, 470e-6];
    const tauS = ohm * farad;
    const waves = await simulator.transient([`V1 a 0 ${emfV}`, `R1 a b ${ohm}`, `C1 b 0 ${farad} IC=0`], {
      stopS: 15 * tauS,
      maxStepS: tauS / 200,
    });
    const volts = waves.volts("b");
    const worst = worstOf(volts, waves.timeS, (t) => emfV * (1 - Math.exp(-t / tauS)), emfV);
    expect(worst).toBeLessThan(RELATIVE);
    const joule = waves.integral(waves.fedBy("V1"), 0, 15 * tauS, true);
    expect(joule / ((emfV ** 2 * farad) / (2 * ohm))).toBeCloseTo(1, 3);
    expect(waves.peak(waves.fedBy("V1")) / (emfV / ohm)).toBeCloseTo(1, 2);
  });

  it("a current through resistance and inductance rises as E/R (1 - exp(-t R/L))", async () => {
    const [emfV, ohm, henry] = [25.4, 0.8, 1.5e-3];
    const tauS = henry / ohm;
    const waves = await simulator.transient([`V1 a 0 ${emfV}`, `R1 a b ${ohm}`, `L1 b 0 ${henry} IC=0`], {
      stopS: 8 * tauS,
      maxStepS: tauS / 200,
    });
    const worst = worstOf(waves.fedBy("V1"), waves.timeS, (t) => (emfV / ohm) * (1 - Math.exp(-t / tauS)), emfV / ohm);
    expect(worst).toBeLessThan(RELATIVE);
  });

  it("a body that loses heat in proportion to its rise warms and cools by exp(-t/RC): a behavioural source as heater", async () => {
    const [watt, kelvinPerWatt, joulePerKelvin] = [21, 40, 1.3e-3];
    const tauS = kelvinPerWatt * joulePerKelvin;
    const waves = await simulator.transient(
      [`B1 0 t I = time < ${5 * tauS} ? ${watt} : 0`, `C1 t 0 ${joulePerKelvin} IC=0`, `R1 t 0 ${kelvinPerWatt}`],
      { stopS: 10 * tauS, maxStepS: tauS / 200 },
    );
    const end = watt * kelvinPerWatt;
    const hot = end * (1 - Math.exp(-5));
    const wanted = (t: number) =>
      t < 5 * tauS ? end * (1 - Math.exp(-t / tauS)) : hot * Math.exp(-(t - 5 * tauS) / tauS);
    // A behavioural source has no breakpoint: the switch-off is seen within one step, 1/200 of the time constant.
    expect(worstOf(waves.volts("t"), waves.timeS, wanted, end)).toBeLessThan(6e-3);
  });

  it("a motor without load runs up with tau = R J / K^2: current E/R exp(-t/tau) once its inductance is small", async () => {
    const [emfV, ohm, kVs, inertia] = [12.6, 0.4, 0.03, 5e-5];
    const tauS = (ohm * inertia) / kVs ** 2;
    const waves = await simulator.transient(
      [
        `V1 a 0 ${emfV}`,
        `R1 a b ${ohm}`,
        `Bemf b 0 V = ${kVs}*v(w)`,
        `Bturn 0 w I = -${kVs}*i(V1)`,
        `Cj w 0 ${inertia} IC=0`,
      ],
      { stopS: 8 * tauS, maxStepS: tauS / 200 },
    );
    const wanted = (t: number) => (emfV / ohm) * Math.exp(-t / tauS);
    expect(worstOf(waves.fedBy("V1"), waves.timeS, wanted, emfV / ohm)).toBeLessThan(RELATIVE);
  });

  it("a pulsed resistor: mean is duty times on current, RMS the square root of duty times it, the edges counted", async () => {
    const [emfV, ohm, pwmHz, dutyRatio] = [12.6, 3.1, 220, 0.37];
    const periodS = 1 / pwmHz;
    const edgeS = 1e-6;
    const waves = await simulator.transient(
      [`V1 a 0 PULSE(0 ${emfV} 0 ${edgeS} ${edgeS} ${dutyRatio * periodS - edgeS} ${periodS})`, `R1 a 0 ${ohm}`],
      { stopS: 6 * periodS, maxStepS: periodS / 50 },
    );
    const drawn = waves.fedBy("V1");
    const onA = emfV / ohm;
    expect(waves.mean(drawn, 2 * periodS, 6 * periodS) / (dutyRatio * onA)).toBeCloseTo(1, 4);
    expect(waves.rms(drawn, 2 * periodS, 6 * periodS) / (Math.sqrt(dutyRatio) * onA)).toBeCloseTo(1, 3);
    expect(waves.peak(drawn) / onA).toBeCloseTo(1, 9);
  });

  it("a circuit that does not parse is an error here, never an empty answer", async () => {
    await expect(simulator.transient(["V1 a 0 12", "R1 a b nothing"], { stopS: 1, maxStepS: 0.1 })).rejects.toThrow();
  });

  it("an operating point of a divider is exact to a part in a thousand million", async () => {
    const waves = await simulator.operatingPoint(["V1 a 0 12.6", "R1 a b 0.11", "R2 b 0 2.9"]);
    expect(waves.volts("b")[0]! / ((12.6 * 2.9) / 3.01)).toBeCloseTo(1, 9);
  });
});
