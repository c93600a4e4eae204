export { comparisonFigure, errorWords } from "./comparison-figure.ts";
export { errorText } from "./error-text.ts";
export { type Standing, standingOf, standingSentence } from "./standing.ts";
export type { ValidationPicture, ValidationRow } from "./validation-row.ts";
