import { figureValue, spanOf } from "../quantity/index.js";
import { CLASS_FIGURES } from "./class-figures.js";
import type { ModuleWiring, SupplyWiring } from "./coach-network.js";
import type { Draft } from "./draft.js";
import type { LoadModel } from "./load-model.js";

/** Lays what each module's own electronics draw, at the first supply where its feed is not on record. */
export function layModules(draft: Draft, first: SupplyWiring): ModuleWiring[] {
  const { index, nominalV } = draft;
  const modules: ModuleWiring[] = [];
  for (const module of index.modules.values()) {
    const path = index.pathOf("modules", module.id);
    const kind = module.kind === undefined ? undefined : index.moduleKinds.get(module.kind);
    const feed = draft.nodeAt(module.feedNode);
    const stated = kind?.quiescentA;
    const own = CLASS_FIGURES.quiescentA;
    const isAssumed = stated === undefined;
    const inputPath = kind ? `${index.pathOf("moduleKinds", kind.id)}.quiescentA` : `${path}.kind`;
    if (isAssumed) draft.finder.assumed.push({ path: inputPath, value: own.value, source: own.source });
    const aspect = kind ? {} : { aspect: "quiescent" as const };
    const draw = stated === undefined ? own.value : figureValue(stated);
    const span = stated === undefined ? own.span : spanOf(stated, "current");
    const kneeV = CLASS_FIGURES.kneeRatio.value * nominalV;
    const model = (currentA: number): LoadModel => ({ kind: "current", currentA: Math.max(0, currentA), kneeV });
    const back = draft.nodeAt(module.returnNode);
    modules.push({
      module,
      path,
      quiescent: { path: inputPath, ...aspect, kind: "current", nominal: draw, span, isAssumed },
      quiescentLoad: draft.load(
        feed ?? first.positive,
        back ?? first.negative,
        model(draw),
        model(span.lo),
        model(span.hi),
      ),
    });
  }
  return modules;
}
