import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

const project = (displayName, testMatch, extra = {}) => ({
  displayName,
  rootDir: root,
  testEnvironment: 'node',
  testEnvironmentOptions: { customExportConditions: ['@endfloat/source', 'node', 'node-addons'] },
  testMatch,
  extensionsToTreatAsEsm: ['.ts'],
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  modulePathIgnorePatterns: ['<rootDir>/(libs|apps)/[^/]+/dist/', '<rootDir>/.data/'],
  transform: {
    '^.+\\.ts$': [
      '@swc/jest',
      {
        swcrc: false,
        sourceMaps: 'inline',
        module: { type: 'es6' },
        jsc: {
          parser: { syntax: 'typescript', decorators: true },
          target: 'es2023',
          keepClassNames: true,
          transform: {
            legacyDecorator: true,
            decoratorMetadata: true,
            useDefineForClassFields: false,
            verbatimModuleSyntax: true,
          },
        },
      },
    ],
  },
  ...extra,
});

/** Integration and end-to-end tests share one embedded server; each file gets its own database. */
const withDatabase = {
  globalSetup: '<rootDir>/test/support/start-database.mjs',
  globalTeardown: '<rootDir>/test/support/stop-database.mjs',
};

export default {
  // A bound for a busy machine, not a measure: no test asserts on time.
  testTimeout: 120_000,
  // Modules of a test file stay in the memory of the process that ran it: it is replaced before it fills up.
  workerIdleMemoryLimit: '1GB',
  reporters: ['default', `${root}.config/jest-summary-reporter.mjs`],
  projects: [
    project('unit', ['<rootDir>/libs/*/src/**/*.spec.ts', '<rootDir>/apps/*/src/**/*.spec.ts']),
    project('architecture', [
      '<rootDir>/test/architecture/**/*.spec.ts',
      '<rootDir>/test/oracles/**/*.spec.ts',
    ]),
    project('integration', ['<rootDir>/**/*.int-spec.ts'], withDatabase),
    project('e2e', ['<rootDir>/**/*.e2e-spec.ts'], withDatabase),
  ],
};
