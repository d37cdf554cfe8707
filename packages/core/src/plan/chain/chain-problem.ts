/** What a circuit takes of the module that holds it. */
export interface Taken {
  /** A channel at all; not where its loads got a feed of their own. */
  readonly slot: boolean;
  /** Of the channels that may dim. */
  readonly dimmable: boolean;
  /** Of the channels that may switch. */
  readonly switchable: boolean;
}

/** One way a module may hold one circuit. Several options of one circuit in one pattern exclude each other. */
export interface ChainOption {
  /** Place of the circuit in the problem's list. */
  readonly circuit: number;
  readonly takes: Taken;
  readonly microA: number;
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
}

/** One way a module may be built and set. Channels of one sort are interchangeable, so they are only counted. */
export interface ChainPattern {
  readonly cost: number;
  readonly value: number;
  readonly isTouched: boolean;
  /** Takes one of this part, gives one of that part back. */
  readonly fits?: number | undefined;
  readonly frees?: number | undefined;
  readonly slots: number;
  readonly dimmable: number;
  readonly switchable: number;
  /** Most that all held circuits may draw together. */
  readonly limitMicroA: number;
  readonly options: readonly ChainOption[];
}

export interface ChainModule {
  readonly patterns: readonly ChainPattern[];
  /** Places that are opened where the module is touched or a wire of it is moved, by their place in the problem's list. */
  readonly places: readonly number[];
}

/**
 * A row of modules of which each circuit is held by its own or a neighbouring one, exactly once. Cost (least wanted), value (most wanted) and wires moved (least
 * wanted) are whole numbers and add up over patterns, options and the places opened.
 */
export interface ChainProblem {
  /** For each circuit the place of its own module in the row. */
  readonly homes: readonly number[];
  readonly modules: readonly ChainModule[];
  /** What opening each place costs, once. */
  readonly places: readonly number[];
  /** What is in stock or may be freed: what is fitted beyond both is bought (Infinity: cannot be). */
  readonly parts: readonly { readonly inStock: number; readonly price: number }[];
}

/** What a module does in one solution: the pattern and the options taken, by their places in the lists. */
export interface ChainColumn {
  readonly pattern: number;
  readonly options: readonly number[];
}

/** One complete choice: a column for each module. */
export interface ChainPoint {
  readonly cost: number;
  readonly value: number;
  readonly wires: number;
  readonly columns: readonly ChainColumn[];
}

/** What one unit of cost, of value and one wire moved count. */
export interface Weights {
  readonly perCost: number;
  readonly perValue: number;
  readonly perWire: number;
}

/** Weighs nothing that weighs 0, so that an unbounded figure does no harm there. */
export const weigh = (
  point: { readonly cost: number; readonly value: number; readonly wires: number },
  { perCost, perValue, perWire }: Weights,
): number =>
  (perCost === 0 ? 0 : perCost * point.cost) -
  (perValue === 0 ? 0 : perValue * point.value) +
  (perWire === 0 ? 0 : perWire * point.wires);
