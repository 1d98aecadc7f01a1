import { describe, expect, test } from 'vitest';
import { keptFile, keptPage, keptParts, type KeptPart } from '@/lib/collectors/rules/export';

const nothing = Object.fromEntries(Object.keys(keptParts).map((part) => [part, []])) as Record<
  KeptPart,
  unknown
>;
const kept = {
  ...nothing,
  entries: [{ name: 'Marit <Oland> & "June"', note: null }],
  sales: [
    {
      ...{ totalCents: 10_800n, soldOn: new Date('2026-11-20'), on: new Date('2026-11-21') },
      soldAt: new Date('2026-11-20T00:00:00Z'),
    },
  ],
};
const about = { gallery: 'Tidewrack Clay', at: new Date('2026-11-22T08:30:00Z') };

describe('the file that a person gets', () => {
  const file = JSON.parse(keptFile(kept, about)) as Record<string, unknown>;
  test('has money as text, days as days and moments as moments', () => {
    expect(file['sales']).toEqual([
      {
        ...{ totalCents: '10800', soldOn: '2026-11-20', on: '2026-11-21' },
        soldAt: '2026-11-20T00:00:00.000Z',
      },
    ]);
  });
  test('explains each of its parts in a full sentence', () => {
    expect(file['parts']).toEqual(keptParts);
    expect(Object.keys(file).slice(5)).toEqual(Object.keys(keptParts));
    for (const words of Object.values(keptParts)) expect(words).toMatch(/^[A-Z].*\.$/);
    expect(file).toMatchObject({
      gallery: 'Tidewrack Clay',
      writtenAt: '2026-11-22T08:30:00.000Z',
    });
  });
});

test('the page to be read has the same, and takes no word for a mark', () => {
  const page = keptPage(keptFile(kept, about));
  expect(page).toContain('Marit &#60;Oland&#62; &#38; &#34;June&#34;');
  expect(page).not.toContain('<Oland>');
  expect(page).toContain('<dt>totalCents</dt><dd>10800</dd>');
  expect(page).not.toContain('<dt>note</dt>');
  expect(page.match(/<h2>/g)).toHaveLength(Object.keys(keptParts).length);
  expect(page.match(/Nothing\./g)).toHaveLength(Object.keys(keptParts).length - 2);
});
