import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { readListFile } from '@/lib/stock/reads/list-file';
import { listColumns } from '@/lib/stock/rules/list-columns';
import { planStockList } from '@/lib/stock/rules/list-plan';

const template = readFileSync(
  join(resolve(import.meta.dirname, '../../..'), 'seed/stock-list-template.csv'),
);

test('the list to start from can be brought in as it stands, every line of it', async () => {
  const list = await readListFile(template, 'mm');
  expect(list.ok).toBe(true);
  if (!list.ok) return;
  expect(list.value.passedOver).toEqual([]);
  const plan = planStockList(list.value.rows, { pieces: new Map(), codeOfGtin: new Map() });
  expect(plan.filter((row) => row.verdict !== 'new')).toEqual([]);
  expect(plan.length).toBeGreaterThan(50);
});

test('its heading names every column there is, in the order they are explained', () => {
  const [heading] = template.toString('utf8').split('\r\n');
  expect(heading).toBe(listColumns.map((each) => each.column).join(','));
});
