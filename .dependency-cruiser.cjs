// What may import what. The table of floors is data (scripts/floors.json), so that tests/floors.test.ts reads
// the same one. A rule's comment is what its offender gets to read.
const { floors, exceptions } = require("./scripts/floors.json");

const CORE = "^packages/core/src/";
const TESTS = "\\.(test|bench)\\.tsx?$|/testing/";

/** Folders that `folder` may not import: its own floor and those above, itself and the exceptions apart. */
function forbiddenFor(folder) {
  return Object.keys(floors).filter(
    (other) =>
      other !== folder &&
      floors[other] >= floors[folder] &&
      !exceptions.some(({ from, to }) => from === folder && to === other),
  );
}

const floorRules = Object.keys(floors)
  .map((folder) => ({ folder, above: forbiddenFor(folder) }))
  .filter(({ above }) => above.length > 0)
  .map(({ folder, above }) => ({
    name: `floor-of-${folder}`,
    severity: "error",
    comment: `${folder}/ stands on floor ${floors[folder]} and imports only from floors below. What two neighbours need moves down a floor.`,
    from: { path: `${CORE}${folder}/`, pathNot: TESTS },
    to: { path: `${CORE}(${above.join("|")})/` },
  }));

module.exports = {
  forbidden: [
    ...floorRules,
    {
      name: "folder-without-floor",
      severity: "error",
      comment: "Every folder of the core stands in scripts/floors.json.",
      from: {},
      to: { path: CORE, pathNot: `${CORE}(${Object.keys(floors).join("|")})/` },
    },
    {
      name: "no-cycles",
      severity: "error",
      comment: "Two files that need each other are one file, or lack a third below both.",
      from: {},
      to: { circular: true },
    },
    {
      name: "only-through-index",
      severity: "error",
      comment: "A folder's index.ts is the only file that other folders import.",
      from: { path: `${CORE}([^/]+)/`, pathNot: TESTS },
      to: { path: `${CORE}[^/]+/`, pathNot: [`${CORE}$1/`, `${CORE}[^/]+/index\\.ts$`] },
    },
    {
      name: "core-without-node",
      severity: "error",
      comment: "The core runs in a browser, a worker and Node alike: no Node modules.",
      from: { path: CORE, pathNot: TESTS },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "one-home-of-booleans",
      severity: "error",
      comment: "Polygon booleans stand behind curve/region.ts, so that they can be replaced in one place.",
      from: { pathNot: `${CORE}curve/region\\.ts$` },
      to: { path: "(^|node_modules/)clipper2-ts" },
    },
    {
      name: "core-below-faces",
      severity: "error",
      comment: "The core knows none of its faces.",
      from: { path: CORE },
      to: { path: "^packages/(?!core/)" },
    },
    {
      name: "faces-through-entries",
      severity: "error",
      comment: "A face imports the core as `mouldwright/<folder>`, never by a path.",
      from: { path: "^packages/(?!core/)", pathNot: TESTS },
      to: { path: "^packages/core/", dependencyTypesNot: ["aliased-workspace"] },
    },
    {
      name: "no-tests-in-the-build",
      severity: "error",
      comment: "What is shipped imports no test, no test's helper and no development dependency.",
      from: { path: "^packages/", pathNot: TESTS },
      to: { path: TESTS },
    },
    {
      name: "no-development-dependencies-in-the-build",
      severity: "error",
      comment: "What is shipped imports no development dependency.",
      from: { path: "^packages/[^/]+/src/", pathNot: TESTS },
      to: { dependencyTypes: ["npm-dev"] },
    },
    {
      name: "nothing-missing",
      severity: "error",
      comment: "The imported file or package is not there.",
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "types", "node", "default"],
      extensions: [".ts", ".tsx", ".mjs", ".js", ".cjs", ".json"],
    },
  },
};
