export { type MissionDefinition, missionDefinition } from "./definition.ts";
export { type Route, readRoute } from "./route.ts";
