import type { Analysis, AnalysisResult, Figure } from "@wingseed/engine";
import {
  conditionsInWords,
  drawFigure,
  figuresGeoJson,
  lightTheme,
  type OutputSchema,
  resultCsv,
  svgText,
  terminalReport,
  type ValidationRow,
} from "@wingseed/reports";
import type { ResultView, Runner } from "@wingseed/runner";
import { Refused } from "./exit-status.ts";
import type { Streams } from "./streams.ts";

export const formats = ["table", "json", "csv", "geojson", "svg"] as const;
export type Format = (typeof formats)[number];

/** A result as text: what goes to standard output or a file, and what is said beside it. */
export interface Written {
  readonly content: string;
  readonly remarks: string;
}

export interface Shown {
  readonly runner: Runner;
  readonly analysis: Analysis;
  readonly result: AnalysisResult;
  readonly view: ResultView;
}

export function resultText(
  shown: Shown,
  format: Format,
  options: { figure?: string | undefined; streams: Streams; toFile: boolean; validation: readonly ValidationRow[] },
): Written {
  const { runner, analysis, result, view } = shown;
  const { streams, toFile } = options;
  const conditions = conditionsInWords(runner.registry.inputSchema(analysis.name), result);
  const report = terminalReport(analysis, result, view, {
    width: toFile ? 100 : streams.width,
    color: streams.isColoured && !toFile,
    validation: options.validation,
    ...(conditions === "" ? {} : { conditions }),
  });
  const remarks = report.stderr;
  switch (format) {
    case "table":
      return { content: report.stdout, remarks };
    case "json":
      return { content: `${JSON.stringify(result, null, 2)}\n`, remarks };
    case "csv":
      return { content: resultCsv(result, runner.registry.outputSchema(analysis.name) as OutputSchema), remarks };
    case "geojson":
      return { content: geoJson(analysis, figuresOf(view)), remarks };
    case "svg":
      return { content: svg(analysis, figuresOf(view), options.figure), remarks };
  }
}

function figuresOf(view: ResultView): readonly Figure[] {
  return view.cases.flatMap((one) => one?.figures ?? []);
}

function geoJson(analysis: Analysis, figures: readonly Figure[]): string {
  const collection = figuresGeoJson(figures);
  if (!collection) throw new Refused(`"${analysis.name}" draws no map here, so there is nothing to write as GeoJSON.`);
  return `${JSON.stringify(collection, null, 2)}\n`;
}

function svg(analysis: Analysis, figures: readonly Figure[], wanted: string | undefined): string {
  const pictures = figures.filter(({ kind }) => kind !== "table" && kind !== "text");
  const figure = wanted === undefined ? (pictures[0] ?? figures[0]) : figures.find(({ id }) => id === wanted);
  if (figure) return `${svgText(drawFigure(figure, { width: 960, theme: lightTheme }))}\n`;
  const known = figures.map(({ id }) => id).join(", ");
  throw new Refused(
    wanted === undefined
      ? `"${analysis.name}" gave no picture here.`
      : `"${analysis.name}" has no figure "${wanted}". It has: ${known || "none"}.`,
  );
}
