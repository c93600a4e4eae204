export type { ValidationRow } from "../validation/index.ts";
export type { Block, FigureBlock, FigureOrigin, TableBlock } from "./blocks.ts";
export { dossierBlocks } from "./dossier-blocks.ts";
export { dossierPdf } from "./dossier-pdf.ts";
export type { DossierChapter, DossierRequest } from "./dossier-request.ts";
