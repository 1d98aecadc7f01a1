import { expect, test } from 'vitest';
import {
  decideChange,
  staffRefusalField,
  staffRefusalMessage,
  type StaffMember,
  type StaffRefusal,
} from '@/lib/access/rules/staff';

const maren: StaffMember = { id: 'm', name: 'Maren', roles: ['owner'], active: true };
const tomas: StaffMember = { id: 't', name: 'Tomas', roles: ['gallery'], active: true };
const away: StaffMember = { id: 'a', name: 'Away', roles: ['owner'], active: false };
const staff = [maren, tomas, away];

test('a stranger cannot be changed', () => {
  expect(decideChange(staff, { id: 'x', active: false })).toEqual({
    ok: false,
    refusal: { code: 'unknown_person' },
  });
});

test.each([
  ['becomes a maker', { id: 'm', roles: ['maker'] as const }],
  ['has their access stopped', { id: 'm', active: false }],
])('the last owner who can sign in never %s', (_label, change) => {
  expect(decideChange(staff, change)).toEqual({
    ok: false,
    refusal: { code: 'last_owner', name: 'Maren' },
  });
});

test('an owner may take on another part as long as they stay an owner', () => {
  const change = { id: 'm', roles: ['owner', 'maker'] as const };
  expect(decideChange(staff, change)).toEqual({ ok: true, value: { ...maren, ...change } });
});

test('once there is a second owner, the first may go', () => {
  const two = [maren, { ...tomas, roles: ['owner', 'gallery'] as const }];
  expect(decideChange(two, { id: 'm', active: false }).ok).toBe(true);
});

const sentences: Record<StaffRefusal['code'], StaffRefusal> = {
  not_allowed: { code: 'not_allowed', permission: 'staff.keep' },
  unknown_person: { code: 'unknown_person' },
  sign_in_name_taken: { code: 'sign_in_name_taken', signInName: 'wren' },
  last_owner: { code: 'last_owner', name: 'Maren' },
  own_password_wrong: { code: 'own_password_wrong' },
  session_unknown: { code: 'session_unknown' },
  key_used_for_something_else: { code: 'key_used_for_something_else' },
  password_too_short: { code: 'password_too_short', lengthLeast: 12 },
  password_too_long: { code: 'password_too_long', lengthMost: 128 },
  password_too_common: { code: 'password_too_common' },
  password_is_the_name: { code: 'password_is_the_name' },
};

test.each(Object.values(sentences))('$code is told in a full sentence', (refusal) => {
  expect(staffRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});

test('a refusal stands beside the field it is about', () => {
  expect(staffRefusalField(sentences.sign_in_name_taken)).toBe('signInName');
  expect(staffRefusalField(sentences.own_password_wrong)).toBe('currentPassword');
  expect(staffRefusalField(sentences.password_too_common)).toBe('password');
  expect(staffRefusalField(sentences.last_owner)).toBeNull();
});
