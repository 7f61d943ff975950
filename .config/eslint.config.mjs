import { fileURLToPath } from 'node:url';
import tseslint from 'typescript-eslint';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Rooms that compute or order steps: no clock, no randomness, no input or output. */
const PURE = [
  'statistics',
  'metrology',
  'wear',
  'reliability',
  'stock',
  'diagnosis',
  'decision',
  'catalogue',
  'workshop',
];

const noClockOrChance = [
  {
    selector: "MemberExpression[object.name='Math'][property.name='random']",
    message: 'Randomness is passed in.',
  },
  { selector: "MemberExpression[object.name='Date'][property.name='now']", message: 'Time is passed in.' },
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Time is passed in.' },
  { selector: "CallExpression[callee.name='Date']", message: 'Time is passed in.' },
];

export default tseslint.config(
  {
    ignores: [
      '**/dist/**',
      '**/generated/**',
      'libs/client/src/document/**',
      '**/node_modules/**',
      '.data/**',
      '**/*.mjs',
      '**/*.cjs',
      '**/*.js',
      '**/*.d.ts',
      '.config/*.ts',
    ],
  },
  ...tseslint.configs.strictTypeChecked,
  {
    basePath: root,
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Shapes on the wire are classes for their decorators and are filled from object literals.
      '@typescript-eslint/no-misused-spread': 'off',
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true, allowEmpty: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/unified-signatures': 'off',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/no-unnecessary-type-parameters': 'off',
      'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
      complexity: ['error', 15],
    },
  },
  {
    // Nest's emitted metadata needs DTO and provider classes as values.
    files: ['apps/**/*.ts', 'libs/contracts/**/*.ts'],
    rules: { '@typescript-eslint/consistent-type-imports': 'off' },
  },
  {
    files: PURE.map((room) => `libs/${room}/src/**/*.ts`),
    rules: { 'no-restricted-syntax': ['error', ...noClockOrChance] },
  },
  {
    files: ['libs/persistence/src/**/*.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'MemberExpression[property.name=/^(findUnique|findUniqueOrThrow|\\$executeRawUnsafe|\\$queryRawUnsafe)$/]',
          message:
            'findUnique is batched across transactions, raw unsafe calls take text: use findFirst or the transaction.',
        },
      ],
    },
  },
  {
    // The composed field decorators are the only place that names the validator and the document decorators.
    files: ['libs/contracts/src/**/*.ts', 'apps/**/*.ts'],
    ignores: ['libs/contracts/src/fields/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          paths: [
            { name: 'class-validator', message: 'Declare a field with contracts/fields.' },
            {
              name: '@nestjs/swagger',
              importNames: ['ApiProperty', 'ApiPropertyOptional'],
              message: 'Declare a field with contracts/fields.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['**/*.spec.ts', '**/*.int-spec.ts', '**/*.e2e-spec.ts', 'test/**/*.ts'],
    rules: {
      'max-lines': 'off',
      'no-restricted-imports': 'off',
      'no-restricted-syntax': [
        'error',
        {
          selector: "MemberExpression[object.name=/^(it|test|describe)$/][property.name='only']",
          message: 'No focused tests.',
        },
      ],
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
);
