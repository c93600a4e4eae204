import type { Raster } from "@wingseed/engine";
import { refused, type TiffRefusal } from "./tiff-refusal.ts";

export type GeoKeys = Readonly<Record<string, unknown>>;

export type ReferenceReading =
  | {
      readonly kind: "reference";
      readonly crs: Raster["crs"];
      /** What the file itself says about its heights, when it does. */
      readonly statedDatum?: "mean-sea-level" | "ellipsoid";
    }
  | TiffRefusal;

const allowed = "WGS 84 longitude and latitude (EPSG 4326) or WGS 84 UTM (EPSG 32601 to 32660 and 32701 to 32760)";
const userDefined = 32767;

/**
 * The coordinate reference system that the geo keys of a raster name. Only WGS 84 is read; others are refused by name.
 *
 * Key and unit codes were checked against files of another writer.
 *
 * @source ogc-geotiff-1.1, annexes on keys and codes, from memory
 */
export function rasterReference(keys: GeoKeys | null): ReferenceReading {
  if (keys === null)
    return refused("no coordinate reference system", allowed, `the raster does not say where on Earth it lies; ${allowed} is read`);
  const datum = statedDatum(keys);
  if (typeof datum === "object") return datum;
  const crs = keys.GTModelTypeGeoKey === 1 ? projected(keys) : geographic(keys);
  return "message" in crs ? crs : { kind: "reference", crs, ...(datum === undefined ? {} : { statedDatum: datum }) };
}

function geographic(keys: GeoKeys): Raster["crs"] | TiffRefusal {
  const code = keys.GeographicTypeGeoKey;
  const degrees = keys.GeogAngularUnitsGeoKey === undefined || keys.GeogAngularUnitsGeoKey === 9102;
  if (keys.GTModelTypeGeoKey === 2 && (code === 4326 || code === 4979)) {
    return degrees ? { kind: "wgs84" } : refused("angles in another unit", "degrees", "the coordinates of the raster are not in degrees");
  }
  return unknownReference(keys, code);
}

function projected(keys: GeoKeys): Raster["crs"] | TiffRefusal {
  const code = Number(keys.ProjectedCSTypeGeoKey);
  const unit = keys.ProjLinearUnitsGeoKey;
  if (unit !== undefined && unit !== 9001)
    return refused(`coordinates in unit ${String(unit)}`, "meters", "the coordinates of the raster are not in meters");
  if (code > 32600 && code <= 32660) return { kind: "utm", zone: code - 32600, north: true };
  if (code > 32700 && code <= 32760) return { kind: "utm", zone: code - 32700, north: false };
  return unknownReference(keys, keys.ProjectedCSTypeGeoKey);
}

function unknownReference(keys: GeoKeys, code: unknown): TiffRefusal {
  const citation = [keys.PCSCitationGeoKey, keys.GTCitationGeoKey, keys.GeogCitationGeoKey].find((text) => typeof text === "string");
  const name = typeof citation === "string" ? `"${citation.replace(/[|\0\s]+$/u, "")}"` : "an unnamed system";
  const read = typeof code === "number" && code !== userDefined ? `${name} (EPSG ${code})` : name;
  return refused(read, allowed, `the coordinates of the raster are in ${read}; ${allowed} is read, so convert it first`);
}

/** Vertical systems whose meaning is plain: gravity-related WGS 84 ones (EGM84, EGM96, EGM2008) and the ellipsoid. */
const datums: Readonly<Record<number, "mean-sea-level" | "ellipsoid">> = {
  5798: "mean-sea-level",
  5773: "mean-sea-level",
  3855: "mean-sea-level",
  5714: "mean-sea-level",
  5030: "ellipsoid",
  4979: "ellipsoid",
};

function statedDatum(keys: GeoKeys): "mean-sea-level" | "ellipsoid" | TiffRefusal | undefined {
  const unit = keys.VerticalUnitsGeoKey;
  if (unit !== undefined && unit !== 9001) {
    return refused(
      `heights in unit ${String(unit)}`,
      "meters",
      `the heights of the raster are not in meters (unit code ${String(unit)}); convert it first`,
    );
  }
  if (keys.GeographicTypeGeoKey === 4979) return "ellipsoid";
  const code = keys.VerticalCSTypeGeoKey;
  return typeof code === "number" ? datums[code] : undefined;
}
