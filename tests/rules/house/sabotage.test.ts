import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { ESLint } from 'eslint';
import { expect, onTestFinished, test } from 'vitest';
import { z } from 'zod';

// A gate that cannot fail guards nothing: each is shown a sample of what it must refuse.

const root = resolve(import.meta.dirname, '../../..');
const lintSamples = join(root, 'tests/helpers/sabotage/lint');

const refusedBy: Readonly<Record<string, string>> = {
  'any.ts': '@typescript-eslint/no-explicit-any',
  'environment-elsewhere.ts': 'no-restricted-syntax',
  'float-money.ts': 'no-restricted-syntax',
  'floating-promise.ts': '@typescript-eslint/no-floating-promises',
  'forgotten-case.ts': '@typescript-eslint/switch-exhaustiveness-check',
  'own-clock.ts': 'no-restricted-syntax',
  'own-transaction.ts': 'no-restricted-syntax',
  'unsafe-sql.ts': 'no-restricted-syntax',
  'unsure.ts': '@typescript-eslint/no-non-null-assertion',
};

test('every lint sample has the rule that refuses it', () => {
  expect(readdirSync(lintSamples).sort()).toEqual(Object.keys(refusedBy).sort());
});

test('lint refuses every sample, each for its own reason', async () => {
  const eslint = new ESLint({ cwd: root });
  // A sample is read as if it stood in an area of lib, where the rules are strictest.
  const filePath = join(root, 'lib/money/rules.ts');
  for (const [sample, rule] of Object.entries(refusedBy)) {
    const text = readFileSync(join(lintSamples, sample), 'utf8');
    const [answer] = await eslint.lintText(text, { filePath });
    expect(
      answer?.messages.map((one) => one.ruleId),
      sample,
    ).toContain(rule);
  }
}, 120_000);

const configShape = z.object({
  floors: z.array(z.array(z.string())),
  forbidden: z.array(z.looseObject({ name: z.string() })),
  options: z.looseObject({}),
});
const config = configShape.parse(
  createRequire(import.meta.url)('../../../.dependency-cruiser.cjs') as unknown,
);

test('the structure check refuses a sample for every one of its rules', () => {
  const broken = cruise(aBrokenTree());
  const names = config.forbidden.map((rule) => rule.name);
  expect(names.filter((name) => !broken.includes(name))).toEqual([]);
});

test('the structure check passes a tree that breaks nothing', () => {
  const tree = anEmptyTree();
  mkdirSync(join(tree, 'lib/money'), { recursive: true });
  writeFileSync(join(tree, 'lib/money/rules.ts'), 'export const cents = 1;\n');
  expect(cruise(tree)).toEqual([]);
});

/** The sample tree, and an import upwards from every floor to the next. */
function aBrokenTree(): string {
  const tree = anEmptyTree();
  cpSync(join(root, 'tests/helpers/sabotage/tree'), tree, { recursive: true });
  mkdirSync(join(tree, 'generated/prisma'), { recursive: true });
  writeFileSync(join(tree, 'generated/prisma/client.ts'), 'export const client = 1;\n');
  for (const [floor, areas] of config.floors.entries()) {
    const above = config.floors[floor + 1]?.[0];
    const own = areas[0] ?? '';
    const text = above ? `export { x } from '../${above}/floor';\n` : 'export const x = 1;\n';
    const file = join(tree, `lib/${own}/floor.ts`);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return tree;
}

function anEmptyTree(): string {
  const tree = mkdtempSync(join(tmpdir(), 'kiln-structure-'));
  onTestFinished(() => rmSync(tree, { recursive: true, force: true }));
  symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'));
  cpSync(join(root, 'tsconfig.json'), join(tree, 'tsconfig.json'));
  const { forbidden, options } = config;
  writeFileSync(join(tree, 'rules.json'), JSON.stringify({ forbidden, options }));
  return tree;
}

const answerShape = z.object({
  summary: z.object({
    totalCruised: z.number().min(1),
    violations: z.array(z.object({ rule: z.object({ name: z.string() }) })),
  }),
});

function cruise(tree: string): string[] {
  const parts = ['app', 'lib', 'tests'].filter((part) => readdirSync(tree).includes(part));
  const words = ['--config', 'rules.json', '--output-type', 'json', ...parts];
  const cruiser = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const asked = spawnSync(process.execPath, [cruiser, ...words], { cwd: tree, encoding: 'utf8' });
  const { summary } = answerShape.parse(JSON.parse(asked.stdout));
  return summary.violations.map((one) => one.rule.name);
}
