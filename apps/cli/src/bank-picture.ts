/** A row of switches as text: the number over each, and the side the slide is on. `?` where nothing is known. */
export function bankPicture(positions: string, onIs: "up" | "down" | "left" | "right" | undefined): string {
  const signs = [...positions];
  const on = onIs ?? "up";
  if (on === "left" || on === "right") {
    const [onSign, offSign] = on === "left" ? ["[■ ]", "[ ■]"] : ["[ ■]", "[■ ]"];
    return signs
      .map((sign, i) => `${String(i + 1).padStart(2)} ${sign === "1" ? onSign : sign === "0" ? offSign : "[? ]"}`)
      .join("\n")
      .concat(`\nON is to the ${on}`);
  }
  const row = (isTop: boolean): string =>
    signs
      .map((sign) => (sign === "?" ? (isTop ? "?" : " ") : ((sign === "1") === (on === "up")) === isTop ? "■" : "·"))
      .join("  ");
  return [
    `  ${signs.map((_, i) => String(i + 1).padEnd(3)).join("")}`.trimEnd(),
    `  ${row(true)}`,
    `  ${row(false)}`,
    `  ON is ${on}${onIs === undefined ? " (taken so: the record does not say)" : ""}`,
  ].join("\n");
}
