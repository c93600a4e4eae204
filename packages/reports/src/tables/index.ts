export { csvText, figureCsv, type OutputSchema, resultCsv } from "./csv.ts";
export { axisReading, type FigureReading, figureReadings } from "./figure-readings.ts";
export { type FigureSeries, figureSeries } from "./figure-series.ts";
export { figureTable } from "./figure-table.ts";
export { type FeatureCollection, figuresGeoJson } from "./geojson.ts";
