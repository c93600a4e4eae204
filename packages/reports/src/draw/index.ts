export {
  type AnsweredPage,
  answeredPages,
  type BenchPage,
  type BenchPart,
  benchParts,
  notYet,
  offeredPages,
  type Page,
  type PageHeading,
  type PageSlot,
  pages,
  type UnansweredPage,
  unplacedAnalyses,
} from "../pages.ts";
export {
  axisReading,
  csvText,
  type FeatureCollection,
  type FigureReading,
  type FigureSeries,
  figureCsv,
  figureReadings,
  figureSeries,
  figuresGeoJson,
  figureTable,
  type OutputSchema,
  resultCsv,
} from "../tables/index.ts";
export {
  comparisonFigure,
  errorText,
  errorWords,
  type Standing,
  standingOf,
  standingSentence,
  type ValidationRow,
} from "../validation/index.ts";
export { type DrawOptions, drawFigure } from "./draw-figure.ts";
export { edgeTicks, type LimitFamily } from "./edge-ticks.ts";
export { type Box, boxesOverlap, labelBoxes } from "./label.ts";
export { type MarkStyle, markStyle } from "./meaning.ts";
export { type SvgNode, svgText } from "./node.ts";
export { type PlotPlace, plotPlace } from "./picture.ts";
export { textWidth, wrapText } from "./text-width.ts";
export { namedTokens, painter, type Theme, type TokenName, themeCss, themeDeclarations } from "./theme.ts";
export { darkTheme, lightTheme, type ThemeTokens } from "./tokens.ts";
