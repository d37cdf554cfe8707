import type { LoadModel, Network } from "@fusebook/core/network";

/** Writes a network in the input language of the general-purpose circuit simulator that serves as second opinion. Node 0 is the reference. */
export function netlistOf(network: Network): string {
  const name = (n: number) => (n === network.reference ? "0" : `n${n}`);
  const lines = ["* second opinion"];
  network.branches.forEach((branch, b) => {
    let from = name(branch.from);
    if (branch.emfV !== undefined) {
      lines.push(`V${b} e${b} ${from} ${branch.emfV}`);
      from = `e${b}`;
    }
    lines.push(`R${b} ${from} ${name(branch.to)} ${branch.resistanceOhm}`);
  });
  network.loads.forEach((load, k) => {
    const [from, to] = [name(load.from), name(load.to)];
    if (load.model.kind === "resistance") lines.push(`RL${k} ${from} ${to} ${load.model.resistanceOhm}`);
    else lines.push(`B${k} ${from} ${to} I = ${currentText(load.model, across(from, to))}`);
  });
  lines.push(".options reltol=1e-9 abstol=1e-12 vntol=1e-9 gmin=1e-15", ".op", ".end");
  return lines.join("\n");
}

const across = (from: string, to: string): string =>
  from === "0" ? `(-v(${to}))` : to === "0" ? `v(${from})` : `v(${from},${to})`;

/** The load models written out again from their description, not from the code under test. */
function currentText(model: LoadModel, v: string): string {
  switch (model.kind) {
    case "resistance":
      return `${v}/${model.resistanceOhm}`;
    case "current":
      return `${model.currentA}*min(1,max(0,${v}/${model.kneeV}))`;
    case "power": {
      const out = 0.99 * model.dropOutV;
      const most = model.powerW / model.dropOutV;
      return `${v} >= ${model.dropOutV} ? ${model.powerW}/max(${v},${model.dropOutV}) : max(0,${most}*(${v}-${out})/${model.dropOutV - out})`;
    }
    case "led":
      return `max(0,(${v}-${model.forwardV})/${model.resistanceOhm})`;
    case "filament": {
      const straight = 0.05 * model.ratedV;
      const at = model.currentA * 0.05 ** 0.55;
      return `${v} > ${straight} ? ${model.currentA}*pow(max(${v},${straight})/${model.ratedV},0.55) : ${at}*${v}/${straight}`;
    }
    case "motor":
      return `min(${model.runningA},${v}/${model.stallOhm})`;
    case "regulated":
      return `-min(${model.maxA},max(0,(${model.setV}-${v})/${model.outputOhm}))`;
  }
}
