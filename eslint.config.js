import nextVitals from 'eslint-config-next/core-web-vitals';
import tseslint from 'typescript-eslint';

const moneyByFloat = [
  {
    selector: "CallExpression[callee.name='parseFloat']",
    message: 'Money and measures never pass through floats: use lib/money or lib/units.',
  },
  {
    selector: "CallExpression[callee.property.name='toFixed']",
    message: 'Format through lib/money or lib/units.',
  },
];
const houseSyntax = [
  { selector: 'TSEnumDeclaration', message: 'Use a union of strings.' },
  {
    selector: "MemberExpression[property.name='$transaction']",
    message: 'Open transactions only with inTransaction (lib/platform/db/transaction.ts).',
  },
  {
    selector: 'MemberExpression[property.name=/^\\$(queryRawUnsafe|executeRawUnsafe)$/]',
    message: 'Use tagged $queryRaw.',
  },
  {
    selector: "MemberExpression[object.name='process'][property.name='env']",
    message: 'Read the environment in lib/platform/env.ts only.',
  },
];
const clock = [
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'Time comes in as an argument (lib/platform/clock.ts).',
  },
  {
    selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
    message: 'Time comes in as an argument (lib/platform/clock.ts).',
  },
  {
    selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
    message: 'Chance comes in as an argument.',
  },
];

export default tseslint.config(
  {
    ignores: ['generated/**', '.next/**', 'data/**', 'next-env.d.ts', 'tests/helpers/sabotage/**'],
  },
  ...nextVitals,
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      complexity: ['error', 12],
      'max-depth': ['error', 3],
      'max-params': ['error', 4],
      'max-lines': ['error', { max: 250 }],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
      eqeqeq: 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: false },
      ],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      'no-restricted-syntax': ['error', ...houseSyntax, ...clock, ...moneyByFloat],
    },
  },
  {
    files: ['**/*.tsx'],
    rules: {
      'max-lines': ['error', { max: 200 }],
      'max-lines-per-function': ['error', { max: 80 }],
    },
  },
  {
    // The one place that reads the clock, and the one that reads the environment.
    files: ['lib/platform/**'],
    rules: { 'no-restricted-syntax': ['error', ...moneyByFloat] },
  },
  {
    files: ['tests/**', 'seed/**'],
    rules: {
      'max-lines': ['error', { max: 300 }],
      'max-lines-per-function': 'off',
      'no-restricted-syntax': ['error', ...moneyByFloat],
      'no-console': 'off',
    },
  },
);
