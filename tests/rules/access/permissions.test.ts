import { expect, test } from 'vitest';
import {
  allow,
  endRoomsFor,
  isAllowed,
  notAllowedMessage,
  roomsFor,
  type Actor,
  type Role,
} from '@/lib/access/rules';

const someone = (...roles: Role[]): Actor => ({ id: 'a', name: 'Someone', roles });

test('whoever holds one fitting role may, whatever else they hold', () => {
  expect(allow(someone('books', 'gallery'), 'counter.sell')).toEqual({ ok: true, value: true });
});

test('whoever holds none is told which permission is missing', () => {
  const refusal = { code: 'not_allowed', permission: 'counter.sell' };
  expect(allow(someone('maker', 'books'), 'counter.sell')).toEqual({ ok: false, refusal });
});

test('without a role nothing is allowed, not even looking at pictures', () => {
  expect(isAllowed([], 'files.see')).toBe(false);
});

test('the sentence names what is missing and who can', () => {
  const words = notAllowedMessage({ code: 'not_allowed', permission: 'studio.move' });
  expect(words).toBe(
    'Your part here does not let you move pieces on to the next step. Owner or Maker can.',
  );
});

test('the sentence reads well when the owner alone can', () => {
  const words = notAllowedMessage({ code: 'not_allowed', permission: 'staff.keep' });
  expect(words).toContain('keep the list of who works here. Owner can.');
});

test.each<[Role, string, string]>([
  [
    'owner',
    'Today Counter Stock Commissions Studio Diary Collectors Month Books',
    'Workings Staff',
  ],
  ['gallery', 'Today Counter Stock Commissions Studio Diary Collectors', 'Workings'],
  ['maker', 'Today Stock Commissions Studio Diary Collectors', 'Workings'],
  ['books', 'Today Stock Commissions Collectors Month Books', 'Workings'],
])('the rooms of %s hang in the order of the rail', (role, rooms, atEnd) => {
  expect(roomsFor([role]).map((room) => room.name)).toEqual(rooms.split(' '));
  expect(endRoomsFor([role]).map((room) => room.name)).toEqual(atEnd.split(' '));
});
