export {
  ADIABATIC_SOURCE,
  adiabaticFactor,
  FUSING_SOURCE,
  iceaTimeS,
  meltingCurrentA,
  meltingTimeS,
  withstandAreaMm2,
  withstandTimeS,
} from "./adiabatic.js";
