// The direction of imports: app → db → lib, app → lib, seed → db and lib; nothing points back.
// `npm test -- --only imports` checks it.

/** Packages that only compute: no files, no network, no clock, no screen. */
const PURE_PACKAGES = ['zod', '@stdlib/[^/]+', 'csv-parse', 'temporal-(polyfill|spec|utils)'];

/** @param {string[]} folders */
const inside = (folders) => `^(${folders.join('|')})/`;
const RUNTIME = ['app', 'db', 'lib', 'seed'];

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'lib-imports-only-lib',
      comment: 'lib is the pure core: it knows nothing of the database, the screens or the demo.',
      severity: 'error',
      from: { path: '^lib/' },
      to: { path: inside(['app', 'db', 'seed', 'scripts', 'tests']) },
    },
    {
      name: 'lib-has-no-io',
      comment: 'No files, network, threads, clock or randomness of Node.js in lib: they are arguments.',
      severity: 'error',
      from: { path: '^lib/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'lib-uses-pure-packages',
      comment: 'Packages in lib only compute. A new one belongs in PURE_PACKAGES if that is true of it.',
      severity: 'error',
      from: { path: '^lib/' },
      to: { path: 'node_modules/', pathNot: `node_modules/(${PURE_PACKAGES.join('|')})/` },
    },
    {
      name: 'db-imports-db-and-lib',
      severity: 'error',
      from: { path: '^db/' },
      to: { path: inside(['app', 'seed', 'scripts', 'tests']) },
    },
    {
      name: 'db-knows-no-screen',
      severity: 'error',
      from: { path: '^db/' },
      to: { path: 'node_modules/(react|react-dom|next|react-aria-components|pdfkit|bwip-js)/' },
    },
    {
      name: 'app-imports-app-db-lib',
      severity: 'error',
      from: { path: '^app/' },
      to: { path: inside(['seed', 'scripts', 'tests']) },
    },
    {
      name: 'the-store-is-reached-by-entering',
      comment:
        'Pages, actions and route handlers get the store from `enter`, `endpoint` or the way in, as somebody’s.',
      severity: 'error',
      from: { path: '^app/', pathNot: '^app/_server/' },
      to: { path: '^app/_server/database\\.ts$' },
    },
    {
      name: 'one-engine-behind-db',
      comment: 'Outside db nobody sees the database engine, so that a second one stays possible.',
      severity: 'error',
      from: { path: inside(['app', 'seed']) },
      to: { path: 'node_modules/(better-sqlite3|drizzle-orm)/' },
    },
    {
      name: 'seed-imports-seed-db-lib',
      severity: 'error',
      from: { path: '^seed/' },
      to: { path: inside(['app', 'scripts', 'tests']) },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      from: { pathNot: '^(tests/|(vitest|playwright)\\.config\\.ts$)' },
      to: { path: '^tests/' },
    },
    {
      name: 'bench-is-imported-by-nothing',
      severity: 'error',
      from: { pathNot: '^tests/bench/' },
      to: { path: '^tests/bench/' },
    },
    {
      name: 'bootstrap-uses-nothing-but-node',
      comment: 'It runs before the packages are installed.',
      severity: 'error',
      from: { path: '^scripts/(bootstrap|testing/(run-stages|stages|summary|arguments))' },
      to: { path: 'node_modules/' },
    },
    {
      name: 'no-circular',
      comment: 'Two files that need each other are one file, or lack a third. Types alone may.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'nothing-unresolvable',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-test-packages-at-run-time',
      severity: 'error',
      from: { path: inside(RUNTIME) },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['type-only'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.css$|^\\.next' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    combinedDependencies: false,
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'types', 'default'],
      mainFields: ['module', 'main', 'types'],
    },
  },
};
