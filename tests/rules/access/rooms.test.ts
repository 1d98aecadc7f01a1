import { expect, test } from 'vitest';
import { addressesOf, pagesOf } from '@/lib/access/rules/rooms';

test('the makers see no pages of the counter but the orders', () => {
  expect(pagesOf('counter', ['maker']).map((page) => page.key)).toEqual(['orders']);
});

test('only whoever reckons sees what the stock is worth', () => {
  const keys = (role: 'owner' | 'gallery' | 'books') =>
    pagesOf('stock', [role]).map((page) => page.key);
  expect(keys('owner')).toContain('worth');
  expect(keys('books')).toContain('worth');
  expect(keys('gallery')).not.toContain('worth');
});

test('a page that stands apart still belongs to its room', () => {
  expect(addressesOf('/counter')).toContain('/holds');
  expect(addressesOf('/counter')).toContain('/promises');
  expect(addressesOf('/counter')).not.toContain('/counter/aside');
  expect(addressesOf('/stock')).toContain('/fairs');
  expect(addressesOf('/diary')).toEqual(['/sending', '/tiles-on-wall']);
});
