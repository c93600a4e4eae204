export { type Coordinates, type DomainDistance, domainDistance, domainOfRows, domainOutputs } from "./domain-distance.ts";
export { type PublishedBand, publishedBand } from "./published-band.ts";
export { type PublishedCheck, type PublishedError, publishedChecks } from "./published-check.ts";
export { type NearestErrors, type PublishedSeries, publishedErrors, publishedSeries } from "./published-series.ts";
