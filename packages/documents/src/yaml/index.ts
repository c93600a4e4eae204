export { type Positions, readYaml, type YamlSource } from "./yaml-source.ts";
