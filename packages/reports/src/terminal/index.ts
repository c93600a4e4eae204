export { mainTable, type TerminalOptions, type TerminalReport, terminalReport } from "./terminal-report.ts";
