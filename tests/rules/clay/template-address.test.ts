import { describe, expect, test } from 'vitest';
import {
  readTemplateAddress,
  templatePdfHref,
} from '@/app/(rooms)/studio/template/template-address';

const measured = '7b1d2c9e-6a51-4c1a-9a55-0d6a2f4b8c11';
const unmeasured = '2f4b8c11-6a51-4c1a-9a55-7b1d2c9e0d6a';
const known = {
  lengthUnit: 'in',
  paperSize: 'a4',
  bodies: [
    { id: measured, shrinkagePercent: '12' },
    { id: unmeasured, shrinkagePercent: null },
  ],
} as const;
const read = (query: Record<string, string>) => readTemplateAddress(query, known);
const asked = { width: '6', height: '8 1/2', shrinkage: '11.5' };

describe('the address of the template page', () => {
  test('asks for nothing at first, on the paper of the gallery', () => {
    expect(read({})).toMatchObject({ template: null, faults: {}, refused: null, paper: 'a4' });
  });

  test('reads a size, a shrinkage and the parts', () => {
    const { template } = read({ ...asked, across: '3', paper: 'letter' });
    expect(template?.asked).toEqual({
      ...{ firedWidthUm: 152_400, firedHeightUm: 215_900, shrinkagePercent: '11.5' },
      ...{ partsAcross: 3, partsDown: 1, paper: 'letter' },
    });
  });

  test('takes the shrinkage of a clay body, unless one is written', () => {
    const shrinks = (query: Record<string, string>) =>
      read({ ...asked, shrinkage: '', ...query }).template?.asked.shrinkagePercent;
    expect(shrinks({ body: measured })).toBe('12');
    expect(shrinks({ body: measured, shrinkage: '9' })).toBe('9');
  });

  test.each<[Record<string, string>, string, RegExp]>([
    [{ ...asked, width: '' }, 'width', /^Write a length/],
    [{ ...asked, height: 'tall' }, 'height', /does not read as a length/],
    [{ ...asked, shrinkage: '' }, 'shrinkage', /^Choose a clay body/],
    [{ ...asked, shrinkage: '', body: unmeasured }, 'shrinkage', /^Nobody has measured/],
    [{ ...asked, shrinkage: '70' }, 'shrinkage', /^Clay shrinks/],
    [{ ...asked, across: '0' }, 'across', /1 to 40 parts/],
    [{ ...asked, down: 'two' }, 'down', /1 to 40 parts/],
  ])('%j: what is wrong stands at %s', (query, name, said) => {
    const { template, faults } = read(query);
    expect(template).toBeNull();
    const told = Object.entries(faults).filter(([, fault]) => fault !== undefined);
    expect(told).toEqual([[name, expect.stringMatching(said)]]);
  });

  test('what is too large for paper is said of the whole', () => {
    const { template, refused } = read({ ...asked, width: '20 ft', height: '20 ft' });
    expect(template).toBeNull();
    expect(refused).toMatch(/^That would take \d+ sheets; 120 at most are drawn here\./);
  });

  test('its PDF is asked for with the same', () => {
    const address = read({ ...asked, title: 'Heron & reeds', across: '2' });
    const url = new URL(templatePdfHref(address), 'http://localhost');
    expect(url.pathname).toBe('/studio/template/pdf');
    expect(read(Object.fromEntries(url.searchParams)).template).toEqual(address.template);
  });
});
