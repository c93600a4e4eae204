export { addedInFormat2, aircraftFormat2 } from "./aircraft-format-2.ts";
export { type OldPlace, oldPlaces } from "./old-places.ts";
