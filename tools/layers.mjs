// The whole architecture as data: packages from the bottom up, and inside the engine its subjects from the bottom up.
// Rules for the dependency check are made from it, so that this drawing and the check are one thing.

/** Subjects of the engine; those of one rank do not know each other. */
export const subjects = [
  ["numerics"],
  ["quantities", "uncertainty", "reliability"],
  ["published"],
  ["environment"],
  ["aerodynamics", "drivetrain"],
  ["aircraft"],
  ["airframe"],
  ["equilibrium"],
  ["motion"],
  ["performance"],
  ["mission"],
  ["sizing", "contingency"],
  ["encounters"],
  ["risk", "claims", "calibration"],
  ["analyses"],
];

/** Which workspaces each one may import. The web app takes types of the engine only; see `typesOnly`. */
export const mayImport = {
  "packages/engine": [],
  "packages/documents": ["packages/engine"],
  "packages/runner": ["packages/engine", "packages/documents"],
  "packages/reports": ["packages/engine"],
  "apps/server": ["packages/engine", "packages/documents", "packages/runner", "packages/reports"],
  "apps/cli": ["packages/engine", "packages/documents", "packages/runner", "packages/reports", "apps/server"],
  "apps/web": ["packages/engine", "packages/reports"],
};

/** From the first to the second only types may be imported: no physics in the page, none in the drawing. */
export const typesOnly = [
  ["apps/web", "packages/engine"],
  ["apps/cli", "packages/engine"],
  ["apps/server", "packages/engine"],
  ["packages/reports", "packages/engine"],
  ["packages/runner", "packages/engine"],
];

const source = (workspace) => `^${workspace}/src/`;
const engine = "^packages/engine/src/";
const subjectFolder = (names) => `${engine}(${names.join("|")})/`;

const workspaceRules = Object.entries(mayImport).map(([workspace, below]) => ({
  name: `${workspace}-imports-downward`,
  severity: "error",
  comment: "Packages import only what lies below them.",
  from: { path: source(workspace) },
  to: { path: "^(packages|apps)/[^/]+/src/", pathNot: [workspace, ...below].map(source) },
}));

const doorRule = {
  name: "packages-meet-at-the-door",
  severity: "error",
  comment: "Another package is entered by what its package.json exports.",
  from: { path: "^((?:packages|apps)/[^/]+)/src/" },
  to: { path: "^(packages|apps)/[^/]+/src/", pathNot: ["^$1/src/", "/src/index[.]ts$", "/src/[^/]+/index[.]ts$"] },
};

const typeRules = typesOnly.map(([from, to]) => ({
  name: `${from}-takes-types-of-${to}`,
  severity: "error",
  comment: "Only types cross here: the computation itself stays where it is.",
  from: { path: source(from), pathNot: "[.]test[.]tsx?$" },
  to: { path: source(to), dependencyTypesNot: ["type-only"] },
}));

const subjectRules = subjects.flatMap((names, rank) =>
  names.map((name) => ({
    name: `${name}-looks-down-only`,
    severity: "error",
    comment: "Move the shared idea to a lower rank, or pass it in as an argument.",
    from: { path: subjectFolder([name]), pathNot: "[.]test[.]ts$" },
    to: { path: engine, pathNot: [subjectFolder([name]), ...(rank > 0 ? [subjectFolder(subjects.slice(0, rank).flat())] : [])] },
  })),
);

const subjectDoorRule = {
  name: "subjects-meet-at-the-index",
  severity: "error",
  comment: "Another subject is entered by its index.ts.",
  from: { path: `${engine}([^/]+)/` },
  to: { path: `${engine}[^/]+/`, pathNot: [`${engine}$1/`, "/index[.]ts$"] },
};

export const forbidden = [
  { name: "no-cycles", severity: "error", comment: "Modules that need each other are one module.", from: {}, to: { circular: true } },
  {
    name: "tests-are-not-imported",
    severity: "error",
    comment: "A test is nobody's source.",
    from: {},
    to: { path: "[.]test[.]tsx?$" },
  },
  {
    name: "engine-touches-nothing-outside",
    severity: "error",
    comment: "The engine knows no file, no network, no process.",
    from: { path: engine, pathNot: "[.]test[.]ts$" },
    to: { dependencyTypes: ["core"] },
  },
  {
    name: "everything-resolves",
    severity: "error",
    comment: "An import that leads nowhere hides from every other rule.",
    from: {},
    to: { couldNotResolve: true },
  },
  doorRule,
  subjectDoorRule,
  ...workspaceRules,
  ...typeRules,
  ...subjectRules,
];
