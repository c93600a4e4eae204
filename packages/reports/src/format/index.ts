export { type CellValue, type ColumnText, formatColumn, noValue } from "./column.ts";
export { displayUnit, fromUnit, inUnit, type UnitChoice, type UnitSystem } from "./display-unit.ts";
export { limitWord } from "./limit-word.ts";
export { decade, fixedText, powerOfTen, roundNumberText, roundStepBelow, significantText } from "./number.ts";
export { formatReading, plainNumber, type ReadingOptions, type ReadingText } from "./reading.ts";
export { type SentencePart, sentence, sentenceParts, spokenSentence } from "./sentence.ts";
export { type DisplayUnit, displayUnitNames, namedDisplayUnit } from "./units.ts";
