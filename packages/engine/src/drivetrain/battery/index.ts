export { dischargeStep, type Endurance, enduranceAt, type StepOutcome, type TerminalState } from "./discharge.ts";
export { type BatteryPack, batteryPack, type CellCurves, type CellState, type PackLayout } from "./pack.ts";
