import type { z } from "zod";
import type { Figure } from "./figures.ts";
import type { Token } from "./tokens.ts";

/** Something an analysis depends on. The runner passes exactly these, so a result depends on nothing else. */
export type Need =
  | { readonly kind: "document"; readonly path: string }
  | { readonly kind: "raster"; readonly path: string }
  | { readonly kind: "analysis"; readonly name: string; readonly inputs: unknown };

/** A number as it stood in a document: for provenance, slips and intervals. */
export interface WrittenQuantity {
  readonly text: string;
  readonly value: number;
  /** 95 % half-width of a "± …" [same unit, SI], or the bounds of a named distribution. */
  readonly uncertainty?:
    | { readonly kind: "normal"; readonly halfWidth: number }
    | { readonly kind: "uniform"; readonly low: number; readonly high: number }
    | { readonly kind: "triangular"; readonly low: number; readonly mode: number; readonly high: number };
  readonly source?: string;
  readonly line: number;
  readonly column: number;
}

/** A document after reading: SI numbers, no text units left. GeoJSON documents keep their published form. */
export interface ReadDocument {
  readonly path: string;
  /** `project`, `aircraft`, `mission` or `geojson`. */
  readonly kind: string;
  readonly data: unknown;
  /** JSON Pointer → the number as written. */
  readonly written: Readonly<Record<string, WrittenQuantity>>;
  readonly hash: string;
}

/** A raster after decoding, row 0 in the north, values in metres for elevation; NaN nowhere: holes are in `hole`. */
export interface Raster {
  readonly path: string;
  readonly width: number;
  readonly height: number;
  /** Row-major, first row northernmost, `width * height` long. May lie in shared memory. */
  readonly values: Float32Array;
  /** 1 where the file has no value. Same layout. */
  readonly hole: Uint8Array;
  /** Coordinates of the CENTRE of the first (north-west) pixel and the steps to the next, in CRS units (degrees or metres). */
  readonly origin: { readonly x: number; readonly y: number };
  readonly step: { readonly x: number; readonly y: number };
  readonly crs: { readonly kind: "wgs84" } | { readonly kind: "utm"; readonly zone: number; readonly north: boolean };
  /** What the heights are measured from, once the project has said so. */
  readonly heightDatum: "mean-sea-level" | "ellipsoid" | "unknown";
  readonly geoidUndulation?: number;
  readonly hash: string;
}

/** The part of a project that an analysis declared it needs, and nothing else. */
export interface ProjectView {
  readonly documents: Readonly<Record<string, ReadDocument>>;
  readonly rasters: Readonly<Record<string, Raster>>;
}

/** Says no with a reason. `kind` is a stable code; extra fields carry the numbers of the message. */
export interface Problem {
  readonly kind: string;
  readonly message: string;
  readonly [detail: string]: unknown;
}

export interface Warning {
  readonly kind: string;
  readonly message: string;
  /** `care`: true, but read this first. `note`: weak model or recalled value. */
  readonly grade: "care" | "note";
}

export type Outcome<Outputs> = (
  | { readonly outputs: Outputs; readonly problem?: never }
  | { readonly problem: Problem; readonly outputs?: never }
) & {
  readonly warnings?: readonly Warning[];
  /** Values that were neither given nor schema defaults but chosen in the run (for example the project's first aircraft). */
  readonly assumed?: readonly { readonly path: string; readonly value: unknown; readonly because: string }[];
};

/** What a run may use of the world. Everything here is deterministic for the result. */
export interface Context<Outputs> {
  progress(done: number, total: number, doing: string): void;
  /** True once the caller no longer wants the result; the analysis returns soon by throwing `Cancelled`. */
  cancelled(): boolean;
  /** Delivers a coarse picture first. Never cached, never exported as exact. */
  partial(outputs: Outputs, statedError: string): void;
  /** The outputs of an analysis that was declared in `needs`. */
  analysis(name: string, inputs: unknown): Outcome<unknown>;
}

export class Cancelled extends Error {
  constructor() {
    super("cancelled");
    this.name = "Cancelled";
  }
}

/** One limit with the share of it that is used; 1 is the limit itself. */
export interface Limit {
  readonly name: string;
  readonly family: "air" | "power" | "strength" | "control" | "rule";
  /** Used share of the limit [1]. */
  readonly share: number;
  readonly side: "upper" | "lower";
  /** Where it binds, in words ("at 31 m/s, clutch open"). */
  readonly where: string;
  readonly binding: boolean;
}

export interface Answer {
  /** One or two sentences. */
  readonly sentence: readonly Token[];
  /** At most 40 characters. */
  readonly brief: string;
  /** False when a requirement of the question is not met (exit status 1); true or absent otherwise. */
  readonly met?: boolean;
}

/** How the numbers are made and what stands behind them; shown wherever a number is questioned. */
export interface Method {
  readonly summary: string;
  /** Keys of docs/sources.bib. */
  readonly sources: readonly string[];
  /** Folder names under validation/. */
  readonly checks: readonly string[];
}

/**
 * One question about a project, answered by one pure function. Everything that shows, stores or repeats results is
 * written against this type and knows no analysis by name. Outputs with a field of the schema `domainOutputs` (engine/published),
 * by custom named `domain`, are shown with the distance from the nearest published check and its errors.
 */
// biome-ignore lint/suspicious/noExplicitAny: a registry holds analyses of many input and output types
export interface Analysis<Inputs = any, Outputs = any> {
  readonly name: string;
  readonly question: string;
  readonly inputs: z.ZodType<Inputs>;
  readonly outputs: z.ZodType<Outputs>;
  readonly method: Method;
  /** Inputs that show the analysis at work: sample files and the first state of a bench form. */
  readonly example: Readonly<Record<string, unknown>>;
  /** True when the analysis does its work in under a second: faces may recompute it while one drags. */
  readonly quick?: boolean;
  /** Present when the dossier prints it though no page of the manifest lists it. */
  readonly dossier?: { readonly chapter: string };
  /**
   * Asked again with what is already there until it asks for nothing new; so a mission may name its route, and the
   * project the mission. Absent: needs nothing. Must not throw on documents it cannot use; `run` reports those.
   */
  needs?(inputs: Inputs, available: ProjectView): readonly Need[];
  run(project: ProjectView, inputs: Inputs, context: Context<Outputs>): Outcome<Outputs>;
  figures(outputs: Outputs, inputs: Inputs): readonly Figure[];
  answer(outputs: Outputs, inputs: Inputs): Answer;
  limits(outputs: Outputs, inputs: Inputs): readonly Limit[];
}

/** A provenance word for every number that did not come out of this run. */
export type ProvenanceWord = "read" | "computed" | "from memory" | "common practice";

export interface Provenance {
  readonly program: { readonly name: "wingseed"; readonly version: string };
  readonly registryHash: string;
  readonly runtime: { readonly v8: string; readonly architecture: string };
  readonly documents: readonly { readonly path: string; readonly hash: string }[];
  /** Inputs nobody gave, filled from the schema or chosen in the run. */
  readonly defaults: readonly { readonly path: string; readonly value: unknown; readonly because: string }[];
  readonly method: Method;
  /** Seed of the random stream, null when the analysis uses none. */
  readonly seed: number | null;
}

export type Case =
  | { readonly inputs: unknown; readonly outputs: unknown; readonly problem?: never }
  | { readonly inputs: unknown; readonly problem: Problem; readonly outputs?: never };

/** The one shape of every result, on every face and on disk. SI and radians. */
export interface AnalysisResult {
  readonly analysis: string;
  readonly cases: readonly Case[];
  readonly warnings: readonly Warning[];
  readonly provenance: Provenance;
}
