import { beforeEach, expect, test } from 'vitest';
import type { Actor } from '@/lib/access/rules';
import { listAuditUnscoped } from '@/lib/audit/reads';
import { recordAudits } from '@/lib/audit/writes';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok, refuse } from '@/lib/platform/result';
import { sql, startAfresh } from '../../helpers/database';
import { by, openGallery } from '../access/people';

let owner: Actor;

beforeEach(async () => {
  await startAfresh();
  owner = (await openGallery()).owner;
});

const line = (subjectId: string, seconds: number) => ({
  doer: by(owner, seconds),
  did: 'sold at the counter',
  subject: 'Sale',
  subjectId,
  facts: { totalCents: 19_350n, number: 12, gift: false, collector: null, pieces: ['TS-10', 2n] },
});

async function record(...lines: ReturnType<typeof line>[]) {
  return inTransaction(async (tx) => ok(await recordAudits(tx, lines)));
}

test('who did what is kept with its facts, cents as exact text', async () => {
  await record(line('a', 0));
  expect(await listAuditUnscoped([{ subject: 'Sale', subjectIds: ['a'] }])).toMatchObject([
    {
      who: owner.name,
      did: 'sold at the counter',
      facts: {
        ...{ totalCents: '19350', number: 12, gift: false, collector: null },
        pieces: ['TS-10', '2'],
      },
    },
  ]);
});

test('a history has its own subjects only, the latest first', async () => {
  await record(line('a', 0), line('b', 5), line('c', 9));
  const history = await listAuditUnscoped([
    { subject: 'Sale', subjectIds: ['a', 'b'] },
    { subject: 'Commission', subjectIds: ['c'] },
  ]);
  expect(history.map((each) => each.subjectId)).toEqual(['b', 'a']);
});

test('nothing is written down for what was refused', async () => {
  await inTransaction(async (tx) => {
    await recordAudits(tx, [line('a', 0)]);
    return refuse({ code: 'changed_our_mind' });
  });
  expect(await listAuditUnscoped([{ subject: 'Sale', subjectIds: ['a'] }])).toEqual([]);
});

test.each([
  `update "AuditLine" set did = 'did nothing'`,
  'delete from "AuditLine"',
  'truncate "AuditLine"',
])('what was written down stays: %s', async (statement) => {
  await expect(sql(statement)).rejects.toThrow('never_changed');
});
