import { expect, test } from 'vitest';
import type { TileTold } from '@/lib/commissions/reads/colours/shown';
import { tileCardLines } from '@/lib/documents/commissions/tile-card';

const bare: TileTold = {
  ...{ glazes: 'celadon', body: null, coats: null, cone: '', firing: '', batch: null },
  ...{ keptAt: '', areas: [], shades: [], given: null, fired: [] },
};

test('what is not known of a tile is left out of its card', () => {
  expect(tileCardLines(bare)).toEqual(['range not measured']);
});

test('everything on the back of a tile stands on its card', () => {
  const told: TileTold = {
    ...bare,
    ...{ body: 'Shore white', coats: 1, cone: '6', firing: '2027-14', batch: 'B-31, celadon' },
    ...{ keptAt: 'drawer 4', areas: ['sky', 'low water'] },
    shades: [
      { shade: 'light', picture: null, lab: [62.4, -7.1, 9.8] },
      { shade: 'dark', picture: null, lab: null },
    ],
  };
  expect(tileCardLines(told)).toEqual([
    'for sky, low water',
    'on Shore white',
    '1 coat · cone 6 · firing 2027-14',
    'glaze bucket B-31, celadon',
    'light: L* 62.4, a* -7.1, b* 9.8',
    '(CIE L*a*b*, D50)',
    'the studio’s set: drawer 4',
  ]);
});
