import type { LoadModel } from "../network/index.js";

/** The same load on for a part of the time: at any volts it draws `meanRatio` of the current, above 0 to 1. */
export function scaledLoad(model: LoadModel, meanRatio: number): LoadModel {
  switch (model.kind) {
    case "resistance":
      return { ...model, resistanceOhm: model.resistanceOhm / meanRatio };
    case "current":
      return { ...model, currentA: model.currentA * meanRatio };
    case "power":
      return { ...model, powerW: model.powerW * meanRatio };
    case "led":
      return {
        ...model,
        resistanceOhm: model.resistanceOhm / meanRatio,
        ...(model.aboveOhm === undefined ? {} : { aboveOhm: model.aboveOhm / meanRatio }),
      };
    case "filament":
      return { ...model, currentA: model.currentA * meanRatio };
    case "motor":
      return { ...model, runningA: model.runningA * meanRatio, stallOhm: model.stallOhm / meanRatio };
    case "regulated":
      return { ...model, maxA: model.maxA * meanRatio, outputOhm: model.outputOhm / meanRatio };
  }
}
