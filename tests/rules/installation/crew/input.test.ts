import { describe, expect, test } from 'vitest';
import {
  addAbsenceInput,
  keepHoursInput,
  keepWayInput,
  withdrawAbsenceInput,
} from '@/lib/installation/input/crew/crew';

const id = '6f1f1c0e-3c3a-4d6c-9e39-0a4c8f1f7f11';

function faultsOf(read: { error?: { issues: { path: PropertyKey[] }[] } | undefined }): string[] {
  return (read.error?.issues ?? []).map((issue) => issue.path.join('.'));
}

describe('hours by weekday', () => {
  const form = { requestKey: id, staffId: id, 'from.1': '09:00', 'to.1': '17:30' };
  test('are minutes, and an empty day is free', () => {
    expect(keepHoursInput.parse({ ...form, 'from.0': '', 'to.0': '' }).workDays).toEqual([
      { weekday: 1, fromMinute: 540, toMinute: 1050 },
    ]);
  });
  test.each([
    ['only a beginning', { 'from.2': '09:00' }, 'to.2'],
    ['only an end', { 'to.0': '09:00' }, 'from.0'],
    ['an end before the beginning', { 'from.3': '17:00', 'to.3': '09:00' }, 'to.3'],
    ['no time between', { 'from.3': '09:00', 'to.3': '09:00' }, 'to.3'],
    ['no time of day', { 'from.4': 'late', 'to.4': '17:00' }, 'from.4'],
    ['an eighth day', { 'from.7': '09:00', 'to.7': '17:00' }, ''],
  ])('%s is told at its field', (_name, more, field) => {
    expect(faultsOf(keepHoursInput.safeParse({ ...form, ...more }))).toEqual([field]);
  });
});

describe('days away', () => {
  const form = { requestKey: id, staffId: id, fromOn: '2026-05-08' };
  test('are one day where no last one is given', () => {
    expect(addAbsenceInput.parse(form)).toMatchObject({ toOn: '2026-05-08', why: '' });
  });
  test.each([
    ['the last before the first', { toOn: '2026-05-07' }, 'toOn'],
    ['no day', { fromOn: '2026-02-30' }, 'fromOn'],
    ['too many words', { why: 'x'.repeat(201) }, 'why'],
    ['nobody', { staffId: 'Osip' }, 'staffId'],
  ])('%s is told at its field', (_name, more, field) => {
    expect(faultsOf(addAbsenceInput.safeParse({ ...form, ...more }))).toEqual([field]);
  });
  test('are taken back by their name', () => {
    expect(withdrawAbsenceInput.safeParse({ requestKey: id, absenceId: '1' }).success).toBe(false);
  });
});

test.each([
  ['an absurd way', { minutes: '9999' }, 'minutes'],
  ['half a minute', { minutes: '0.5' }, 'minutes'],
  ['nowhere', { to: ' ' }, 'to'],
])('%s is told at its field', (_name, more, field) => {
  const form = { requestKey: id, from: '4 Ropewalk Lane', to: '9 Ferry Steps', minutes: '10' };
  expect(faultsOf(keepWayInput.safeParse({ ...form, ...more }))).toEqual([field]);
});
