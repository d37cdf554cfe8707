/** Our figures beside the simulator's, circuit by circuit; the table is printed by each check, so that what was seen can be read. */
export class Tally {
  private readonly rows: string[] = [];
  private readonly worstOf = new Map<string, number>();
  circuits = 0;

  constructor(private readonly what: string) {}

  /** Notes one circuit's figures as [ours, theirs] and gives the relative differences, ours over theirs less one. */
  note(circuit: string, figures: Readonly<Record<string, readonly [number, number]>>): Record<string, number> {
    this.circuits++;
    const differences: Record<string, number> = {};
    const parts: string[] = [];
    for (const [figure, [ours, theirs]] of Object.entries(figures)) {
      const difference = ours / theirs - 1;
      if (!Number.isFinite(difference)) throw new Error(`${circuit} ${figure}: ${ours} against ${theirs}`);
      differences[figure] = difference;
      this.worstOf.set(figure, Math.max(this.worstOf.get(figure) ?? 0, Math.abs(difference)));
      parts.push(`${figure} ${ours.toPrecision(4)}/${theirs.toPrecision(4)} ${(100 * difference).toFixed(2)} %`);
    }
    this.rows.push(`  ${circuit}: ${parts.join(", ")}`);
    return differences;
  }

  print(): void {
    const worst = [...this.worstOf].map(([figure, by]) => `${figure} ${(100 * by).toFixed(2)} %`).join(", ");
    process.stdout.write(
      `${this.what}: ${this.circuits} circuits, worst difference ${worst} (ours/simulator)\n${this.rows.join("\n")}\n`,
    );
  }
}
