import tseslint from "typescript-eslint";

/** Text of a workbook becomes no markup, and what is the user's stays in the workbook. */
const UNSAFE = [
  { selector: "MemberExpression[property.name=/^(innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|createContextualFragment|srcdoc)$/]", message: "Text could become markup: build elements with h()" },
  { selector: "MemberExpression[object.name='document'][property.name=/^(write|writeln|cookie)$/]", message: "Text could become markup, or leave the workbook" },
  { selector: "Identifier[name=/^(DOMParser|localStorage|sessionStorage|indexedDB)$/]", message: "Text could become markup, or leave the workbook" },
];

/** Imports run one way; a room names the rooms that it must not know. */
const room = (files, forbidden) => ({
  files: [`${files}/**/*.ts`],
  rules: {
    "no-restricted-imports": [
      "error",
      { patterns: forbidden.map((name) => ({ regex: `(^|/)${name}(/|$)`, message: `${files} must not know ${name}: imports run one way` })) },
    ],
  },
});

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "src/catalogue/entries.ts", "src/catalogue/calls.ts", "src/reference-page/reference.js"] },
  tseslint.configs.strict,
  {
    rules: {
      "@typescript-eslint/no-non-null-assertion": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/unified-signatures": "off",
      // A member is left out of a rest by naming it.
      "@typescript-eslint/no-unused-vars": ["error", { ignoreRestSiblings: true }],
      eqeqeq: "error",
      "no-console": ["error", { allow: ["error"] }],
      "max-lines": ["error", { max: 320, skipBlankLines: true, skipComments: true }],
    },
  },
  // The generator of functions.json knows any alone for a cell of any kind.
  { files: ["src/functions/*.ts"], rules: { "@typescript-eslint/no-explicit-any": "off" } },
  { files: ["src/build/**", "src/cli/**", "src/catalogue/generate.ts", "sample-workbooks/**", "manifest/**", "tests/**"], rules: { "no-console": "off" } },
  { files: ["tests/**"], rules: { "max-lines": "off" } },
  { files: ["src/**/*.ts"], rules: { "no-restricted-syntax": ["error", ...UNSAFE] } },
  // That someone has seen the first lot is nothing of a workbook.
  { files: ["src/pane/first-lot/seen.ts"], rules: { "no-restricted-syntax": "off" } },
  room("src/core", ["functions", "formulas", "catalogue", "engine", "workbook", "lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/functions", ["catalogue", "formulas", "engine", "workbook", "lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/catalogue", ["formulas", "engine", "workbook", "lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/formulas", ["engine", "workbook", "lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/engine", ["workbook", "lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/workbook", ["lots", "month", "journal", "explaining", "sharing", "pane", "host", "cli", "excel"]),
  room("src/lots", ["explaining", "sharing", "month", "journal", "pane", "host", "cli", "excel", "engine"]),
  room("src/explaining", ["lots", "month", "journal", "sharing", "pane", "host", "cli", "excel", "engine"]),
  room("src/month", ["journal", "explaining", "sharing", "pane", "host", "cli", "excel", "engine"]),
  room("src/journal", ["sharing", "pane", "host", "cli", "excel", "engine"]),
  room("src/sharing", ["lots", "month", "journal", "pane", "host", "cli", "excel", "engine"]),
  room("src/pane", ["reference-page", "host", "cli", "excel", "engine"]),
  room("src/reference-page", ["host", "cli", "excel", "engine"]),
  room("src/host", ["reference-page", "cli", "excel"]),
  room("src/cli", ["reference-page", "host", "excel", "pane"]),
  room("src/excel", ["reference-page", "host", "cli", "engine"]),
);
