export { z } from "zod";
export { type AircraftDefinition, aircraftDefinition } from "./aircraft/index.ts";
export type {
  Analysis,
  AnalysisResult,
  Answer,
  Case,
  Context,
  Limit,
  Method,
  Need,
  Outcome,
  Problem,
  ProjectView,
  Provenance,
  ProvenanceWord,
  Raster,
  ReadDocument,
  Warning,
  WrittenQuantity,
} from "./analyses/contract.ts";
export { Cancelled } from "./analyses/contract.ts";
export type {
  Axis,
  Border,
  Bound,
  Figure,
  Gap,
  GridFigure,
  LinesFigure,
  MapFigure,
  Meaning,
  NotablePoint,
  Position,
  ProfileFigure,
  ProfilePanel,
  Region,
  RotorRibbon,
  SceneArrow,
  SceneAttitude,
  SceneBound,
  SceneDetail,
  SceneDimension,
  SceneFigure,
  SceneLine,
  SceneMark,
  ScenePoint,
  SceneView,
  Series,
  StackedFigure,
  TableColumn,
  TableFigure,
  TextFigure,
  TreeFigure,
  TreeNode,
} from "./analyses/figures.ts";
export { type ProjectDefinition, projectDefinition } from "./analyses/inputs/project-definition.ts";
export { mostTableRows, type TableData } from "./analyses/inputs/table-data.ts";
export { analyses } from "./analyses/registry.ts";
export type { HandleToken, ReadingToken, Token, WordsToken } from "./analyses/tokens.ts";
export { reading, words } from "./analyses/tokens.ts";
export { type MissionDefinition, missionDefinition } from "./mission/index.ts";
export { type InputRole, type QuantityKind, type QuantityOptions, quantity, quantityKinds } from "./quantities/index.ts";
