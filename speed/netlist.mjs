/** A network in the input language of the general-purpose circuit simulator. */
export function netlistOf(network) {
  const name = (n) => (n === network.reference ? "0" : `n${n}`);
  const lines = ["* coach"];
  network.branches.forEach((branch, b) => {
    let from = name(branch.from);
    if (branch.emfV !== undefined) {
      lines.push(`V${b} e${b} ${from} ${branch.emfV}`);
      from = `e${b}`;
    }
    lines.push(`R${b} ${from} ${name(branch.to)} ${branch.resistanceOhm}`);
  });
  network.loads.forEach(({ from, to, model }, k) => {
    const [a, b] = [name(from), name(to)];
    const v = b === "0" ? `v(${a})` : a === "0" ? `(-v(${b}))` : `v(${a},${b})`;
    lines.push(
      model.kind === "resistance"
        ? `RL${k} ${a} ${b} ${model.resistanceOhm}`
        : `B${k} ${a} ${b} I = ${currentText(model, v)}`,
    );
  });
  lines.push(".options reltol=1e-9 abstol=1e-12 vntol=1e-9 gmin=1e-15", ".op", ".end");
  return lines.join("\n");
}

function currentText(m, v) {
  if (m.kind === "current") return `${m.currentA}*min(1,max(0,${v}/${m.kneeV}))`;
  if (m.kind === "led") return `max(0,(${v}-${m.forwardV})/${m.resistanceOhm})`;
  if (m.kind === "motor") return `min(${m.runningA},${v}/${m.stallOhm})`;
  if (m.kind === "regulated") return `-min(${m.maxA},max(0,(${m.setV}-${v})/${m.outputOhm}))`;
  if (m.kind === "filament") {
    const straight = 0.05 * m.ratedV;
    return `${v} > ${straight} ? ${m.currentA}*pow(max(${v},${straight})/${m.ratedV},0.55) : ${m.currentA * 0.05 ** 0.55}*${v}/${straight}`;
  }
  const out = 0.99 * m.dropOutV;
  return `${v} >= ${m.dropOutV} ? ${m.powerW}/max(${v},${m.dropOutV}) : max(0,${m.powerW / m.dropOutV}*(${v}-${out})/${m.dropOutV - out})`;
}
