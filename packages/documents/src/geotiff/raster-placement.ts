import { refused, type TiffRefusal } from "./tiff-refusal.ts";

export type PlacementReading =
  | {
      readonly kind: "placement";
      /** Centre of the pixel in the first column and first row of the file, in units of the reference system. */
      readonly firstCentre: { readonly x: number; readonly y: number };
      /** Steps to the next column and row; y is negative when rows run southward. */
      readonly step: { readonly x: number; readonly y: number };
    }
  | TiffRefusal;

export interface PlacementTags {
  readonly pixelScale?: ArrayLike<number> | undefined;
  readonly tiepoint?: ArrayLike<number> | undefined;
  readonly transformation?: ArrayLike<number> | undefined;
  /** True when coordinates name pixel centres, false when they name the corners of pixels. */
  readonly pixelIsPoint: boolean;
}

const allowed = "rows that run west to east, under each other north to south or south to north";

/**
 * Where the pixels of a raster lie, from a pixel scale with one tie point or from a transformation matrix.
 *
 * Checked against files of another writer.
 *
 * @source ogc-geotiff-1.1, raster to model transformation, from memory
 */
export function rasterPlacement(tags: PlacementTags): PlacementReading {
  const affine = tags.transformation === undefined ? fromTiepoint(tags) : fromMatrix(tags.transformation);
  if (affine.kind === "refused") return affine;
  const { step, corner } = affine;
  const usable = [step.x, step.y, corner.x, corner.y].every(Number.isFinite) && step.x !== 0 && step.y !== 0;
  if (!usable) return refused("pixels without a size", allowed, "the raster gives its pixels no size, so its values have no place");
  if (step.x < 0) return refused("rows that run east to west", allowed, "the rows of the raster run from east to west; turn it first");
  const half = tags.pixelIsPoint ? 0 : 0.5;
  return { kind: "placement", step, firstCentre: { x: corner.x + half * step.x, y: corner.y + half * step.y } };
}

type Affine = {
  readonly kind: "affine";
  readonly corner: { readonly x: number; readonly y: number };
  readonly step: { readonly x: number; readonly y: number };
};

function fromTiepoint({ pixelScale, tiepoint }: PlacementTags): Affine | TiffRefusal {
  if (pixelScale === undefined || tiepoint === undefined) {
    return refused(
      "no placement",
      allowed,
      "the raster does not say where its pixels lie: it has neither a pixel scale with a tie point nor a transformation",
    );
  }
  if (tiepoint.length !== 6) {
    const count = Math.floor(tiepoint.length / 6);
    return refused(
      `${count} tie points`,
      allowed,
      `the raster is placed by ${count} tie points, which may bend it; one with a pixel scale is read`,
    );
  }
  const [column = Number.NaN, row = Number.NaN, , x = Number.NaN, y = Number.NaN] = Array.from(tiepoint);
  const step = { x: pixelScale[0] ?? Number.NaN, y: -(pixelScale[1] ?? Number.NaN) };
  return { kind: "affine", step, corner: { x: x - column * step.x, y: y - row * step.y } };
}

function fromMatrix(matrix: ArrayLike<number>): Affine | TiffRefusal {
  const [a = Number.NaN, b = Number.NaN, , x = Number.NaN, d = Number.NaN, e = Number.NaN, , y = Number.NaN] = Array.from(matrix);
  if (matrix.length !== 16 || b !== 0 || d !== 0) {
    return refused(
      "a rotated raster",
      allowed,
      "the raster is rotated against its coordinates; turn it so that rows run from west to east",
    );
  }
  return { kind: "affine", step: { x: a, y: e }, corner: { x, y } };
}
