import type { ModuleKind } from "../record/index.js";

export interface PinPlace {
  readonly connector: string;
  readonly pin: string;
}

/** One function of the harness: where it sat, where it goes. `unknown` says which side the record does not show. */
export interface PinMapRow {
  readonly channel?: number;
  /** What the pin is when not a channel, as the sheet says it. */
  readonly is?: string;
  readonly from?: PinPlace;
  readonly to?: PinPlace;
  readonly unknown: readonly ("from" | "to")[];
}

interface PinsOf {
  readonly channel?: number;
  readonly is?: string;
  readonly places: PinPlace[];
}

const keyOf = (pin: { channel?: number | undefined; is?: string | undefined }): string | undefined =>
  pin.channel !== undefined ? `channel ${pin.channel}` : pin.is?.trim().toLowerCase().replace(/\s+/g, " ");

function pinsOf(kind: ModuleKind | undefined): Map<string, PinsOf> {
  const pins = new Map<string, PinsOf>();
  for (const connector of kind?.connectors ?? [])
    for (const pin of connector.pins) {
      const key = keyOf(pin);
      if (key === undefined || key === "") continue;
      const place = { connector: connector.name, pin: pin.pin };
      const known = pins.get(key);
      if (known) known.places.push(place);
      else
        pins.set(key, {
          ...(pin.channel !== undefined ? { channel: pin.channel } : { is: pin.is?.trim() ?? "" }),
          places: [place],
        });
    }
  return pins;
}

const shapeOf = (kind: ModuleKind): string =>
  JSON.stringify(
    (kind.connectors ?? []).map((one) => [
      one.name,
      one.keyedAt ?? "",
      one.columns ?? 0,
      one.pins.map((pin) => [pin.pin, keyOf(pin) ?? ""]),
    ]),
  );

/**
 * Where does each wire of the old harness go on the new module? By channel and by what the pin is; a function that only one sheet shows is listed with the
 * other side unknown, and channels the sheets leave out are listed with both. Undefined where the connectors are the same and the harness goes straight over.
 */
export function pinMapOf(fromKind: ModuleKind | undefined, toKind: ModuleKind): PinMapRow[] | undefined {
  if (fromKind !== undefined) {
    if (fromKind.id === toKind.id) return undefined;
    if ((fromKind.connectors ?? []).length > 0 && shapeOf(fromKind) === shapeOf(toKind)) return undefined;
  }
  const from = pinsOf(fromKind);
  const to = pinsOf(toKind);
  const rows: PinMapRow[] = [];
  const add = (what: { channel?: number; is?: string }, a: readonly PinPlace[], b: readonly PinPlace[]) => {
    for (let i = 0; i < Math.max(a.length, b.length, 1); i++) {
      const old = a[i];
      const fresh = b[i];
      rows.push({
        ...what,
        ...(old === undefined ? {} : { from: old }),
        ...(fresh === undefined ? {} : { to: fresh }),
        unknown: [...(old === undefined ? (["from"] as const) : []), ...(fresh === undefined ? (["to"] as const) : [])],
      });
    }
  };
  const channels = Math.max(fromKind?.channels ?? toKind.channels, 0);
  for (let channel = 1; channel <= channels; channel++) {
    const key = `channel ${channel}`;
    add({ channel }, from.get(key)?.places ?? [], to.get(key)?.places ?? []);
  }
  for (const [key, pins] of from)
    if (pins.is !== undefined) add({ is: pins.is }, pins.places, to.get(key)?.places ?? []);
  for (const [key, pins] of to) if (pins.is !== undefined && !from.has(key)) add({ is: pins.is }, [], pins.places);
  return rows;
}
