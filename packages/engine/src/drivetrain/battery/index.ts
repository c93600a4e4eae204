export { dischargeStep, type Endurance, enduranceAt, type StepOutcome, type TerminalState, terminalState } from "./discharge.ts";
export { type BatteryPack, batteryPack, type CellCurves, type CellState, newCells, type PackLayout } from "./pack.ts";
