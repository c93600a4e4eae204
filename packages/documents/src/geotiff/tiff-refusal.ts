/** Why a raster cannot be used, as one sentence with its cure. */
export interface TiffRefusal {
  readonly kind: "refused";
  readonly code: "raster" | "too-large";
  readonly read: string;
  readonly allowed: string;
  readonly message: string;
}

export function refused(read: string, allowed: string, message: string): TiffRefusal {
  return { kind: "refused", code: "raster", read, allowed, message };
}
