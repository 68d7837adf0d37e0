const pureLibraries = "node_modules/(fraction\\.js|yaml|zod|pbf|pluralize|entities|@types/pluralize)/";

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    {
      name: "core-is-pure",
      comment: "Core imports only core and the short list of libraries that do no I/O.",
      severity: "error",
      from: { path: "^core/" },
      to: { pathNot: ["^core/", pureLibraries] },
    },
    {
      name: "units-stand-alone",
      comment: "core/units is the ground that the rest of core stands on.",
      severity: "error",
      from: { path: "^core/units/" },
      to: { path: "^core/", pathNot: "^core/units/" },
    },
    {
      name: "cook-knows-no-network",
      comment: "The fold over a meal must not depend on how its events travel.",
      severity: "error",
      from: { path: "^core/(cook|pace)/" },
      to: { path: "^core/sync/" },
    },
    {
      name: "server-and-client-are-strangers",
      comment: "They share core/sync/protocol.ts and nothing else.",
      severity: "error",
      from: { path: "^(server|client)/" },
      to: { path: "^(server|client)/", pathNot: "^$1/" },
    },
    {
      name: "client-runs-in-a-browser",
      severity: "error",
      from: { path: "^client/" },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "product-knows-no-tests",
      severity: "error",
      from: { path: "^(core|server|client)/" },
      to: { path: "^(tests|tools)/" },
    },
    {
      name: "product-ships-without-dev-tools",
      severity: "error",
      from: { path: "^(core|server|client)/" },
      to: {
        dependencyTypes: ["npm-dev"],
        dependencyTypesNot: ["type-only"],
        pathNot: "node_modules/@types/",
      },
    },
    {
      name: "touch-needs-no-words",
      comment: "The page answers a touch before it has fetched what understands words.",
      severity: "error",
      from: { path: "^core/talk/respond-to\\.ts$" },
      to: { path: "^core/talk/(understand|grammar-for|phrasebook|pattern|matcher)\\.ts$", reachable: true },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "imports-resolve",
      severity: "error",
      from: {},
      to: { couldNotResolve: true, pathNot: "\\?(url|raw|worker)" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^(dist|var|coverage|tests/\\.out)/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "types", "node", "default"],
      mainFields: ["module", "main", "types"],
    },
  },
};
