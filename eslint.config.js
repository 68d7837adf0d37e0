import reactHooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";

const config = ["*.config.{js,ts}", ".dependency-cruiser.js"];
const namedExportsOnly = [
  { selector: "ExportDefaultDeclaration", message: "Named exports only." },
  { selector: "ExportSpecifier[exported.name='default']", message: "Named exports only." },
  { selector: "ExportAllDeclaration", message: "Name what you export: no `export *`." },
];
const input = (name) => ({
  name,
  message: "Time, ids and chance are inputs of core: take them as arguments.",
});

export default tseslint.config(
  { ignores: ["dist", "var", "coverage", "tests/.out", "models", "node_modules"] },
  tseslint.configs.strictTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      eqeqeq: "error",
      "no-console": "error",
      "no-restricted-syntax": ["error", ...namedExportsOnly],
      "max-lines": ["error", 300],
      "max-lines-per-function": ["error", { max: 40, skipBlankLines: true, skipComments: true }],
      "@typescript-eslint/consistent-type-imports": "error",
      // A `default` would hide a state that somebody adds to the union later.
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: false, requireDefaultForNonUnion: false },
      ],
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      "@typescript-eslint/no-confusing-void-expression": "off",
      "@typescript-eslint/no-unnecessary-condition": ["error", { allowConstantLoopConditions: true }],
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/no-misused-promises": ["error", { checksVoidReturn: { attributes: false } }],
      // An adapter keeps the promise of its port even where it happens to be ready at once.
      "@typescript-eslint/require-await": "off",
      "@typescript-eslint/no-misused-spread": ["error", { allow: ["string"] }],
      "@typescript-eslint/unified-signatures": "off",
      "@typescript-eslint/no-unnecessary-type-parameters": "off",
    },
  },
  {
    files: ["core/**"],
    rules: {
      "no-restricted-globals": ["error", ...["Date", "crypto", "performance"].map(input)],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: input("").message },
        ...["Date", "crypto", "performance"].map((property) => ({
          object: "globalThis",
          property,
          message: input("").message,
        })),
      ],
    },
  },
  {
    files: ["client/**"],
    plugins: { "react-hooks": reactHooks },
    rules: { "react-hooks/rules-of-hooks": "error", "react-hooks/exhaustive-deps": "error" },
  },
  // One component a file, at most 100 lines, most of it markup.
  {
    files: ["client/**/*.tsx"],
    rules: { "max-lines-per-function": ["error", { max: 100, skipBlankLines: true, skipComments: true }] },
  },
  // A table of facts is as long as the facts are.
  { files: ["**/*-table.ts"], rules: { "max-lines": "off" } },
  // A test is read from top to bottom: given, when, then. A describe block holds many.
  { files: ["tests/**"], rules: { "max-lines-per-function": "off" } },
  // What prints: the command line's one printing module, the tools, the benches.
  { files: ["server/cli/print.ts", "tools/**", "tests/bench/**"], rules: { "no-console": "off" } },
  { files: config, rules: { "no-restricted-syntax": "off" } },
  { files: ["**/*.{js,mjs}"], extends: [tseslint.configs.disableTypeChecked] },
);
