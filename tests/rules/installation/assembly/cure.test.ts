import { describe, expect, test } from 'vitest';
import { assemblyInput } from '@/lib/installation/input/assembly/assembly';
import {
  assemblyRefusalMessage,
  coldCaution,
  cureWords,
  decideCuring,
  isCuring,
  type AssemblyRefusal,
} from '@/lib/installation/rules/assembly/cure';
import type { Day } from '@/lib/dates/rules';

const zone = 'America/Los_Angeles';
const now = new Date('2026-05-08T20:00:00Z');
const decide = (on: Day, at: string, last: Date | null = null, hours = 48) =>
  decideCuring({ on, at, cureHours: hours }, { zone, now, last });

describe('until when it cures', () => {
  test('hours that pass are counted, from the last piece', () => {
    expect(decide('2026-05-08', '09:30')).toEqual({
      ok: true,
      value: {
        finishedAt: new Date('2026-05-08T16:30:00Z'),
        curesAt: new Date('2026-05-10T16:30:00Z'),
      },
    });
  });

  test('a night in which the clocks are set changes nothing', () => {
    const set = { on: '2026-03-07', at: '18:00', cureHours: 24 } as const;
    const decided = decideCuring(set, { zone, now, last: null });
    expect(decided).toMatchObject({ value: { curesAt: new Date('2026-03-09T02:00:00Z') } });
  });

  test('what was set this very minute is written down, what is to come is not', () => {
    expect(decide('2026-05-08', '13:00')).toMatchObject({ ok: true });
    expect(decide('2026-05-08', '13:01')).toEqual({ ok: false, refusal: { code: 'set_to_come' } });
  });

  test('the newest holds: none is written down before it, one of the same hour puts it right', () => {
    const last = new Date('2026-05-07T16:00:00Z');
    expect(decide('2026-05-07', '08:59', last)).toEqual({
      ok: false,
      refusal: { code: 'set_before_the_last', lastAt: last, zone },
    });
    expect(decide('2026-05-07', '09:00', last, 12)).toMatchObject({ ok: true });
    expect(decide('2026-05-08', '09:00', last)).toMatchObject({ ok: true });
  });

  test('at the very end it has cured', () => {
    const curing = { curesAt: new Date('2026-05-10T16:30:00Z') };
    expect(isCuring(curing, new Date('2026-05-10T16:29:59Z'))).toBe(true);
    expect(isCuring(curing, curing.curesAt)).toBe(false);
    expect(cureWords(curing, now, zone)).toBe('Cures until 10 May 2026, 9:30 am');
    expect(cureWords(curing, curing.curesAt, zone)).toBe('Has cured since 10 May 2026, 9:30 am');
  });

  test('each refusal has its sentence', () => {
    const refusals: AssemblyRefusal[] = [
      { code: 'set_to_come' },
      { code: 'set_before_the_last', lastAt: now, zone },
    ];
    const [first, second] = refusals.map((refusal) => assemblyRefusalMessage(refusal));
    expect(first).toContain('still to come');
    expect(second).toContain('8 May 2026, 1:00 pm');
    expect(assemblyRefusalMessage({ code: 'unknown_commission' })).not.toBe(first);
  });
});

test.each([
  [null, null],
  [18, null],
  [25, null],
  [17, 'takes longer'],
  [10, 'takes longer'],
  [9, 'do not cure at all'],
  [-5, 'do not cure at all'],
])('in a room of %s °C: %s', (roomC, caution) => {
  const told = coldCaution(roomC);
  if (caution === null) expect(told).toBeNull();
  else expect(told).toContain(caution);
});

describe('the form', () => {
  const typed = {
    requestKey: '0190f6a2-7c11-4d3e-9a55-1b2c3d4e5f60',
    commissionId: '0190f6a2-7c11-4d3e-9a55-1b2c3d4e5f61',
    board: '19 mm plywood, sealed',
    adhesive: 'polymer mortar',
    finishedOn: '2026-05-08',
    finishedAt: '09:30',
    scale: 'F',
    cure: '2',
    cureIn: 'days',
  };

  test('reads days as hours, and what is not known as not known', () => {
    expect(assemblyInput.parse(typed)).toMatchObject({
      set: { on: '2026-05-08', at: '09:30', cureHours: 48 },
      roomC: null,
      scrapKept: false,
      lot: '',
    });
  });

  test.each([
    ['F', '68', 20],
    ['F', '14', -10],
    ['C', '20', 20],
    ['C', '-3', -3],
  ])('in °%s %s is %d °C', (scale, room, roomC) => {
    expect(assemblyInput.parse({ ...typed, scale, room })).toMatchObject({ roomC });
  });

  test.each([
    [{ cure: '0' }, 'cure'],
    [{ cure: '91' }, 'cure'],
    [{ cure: '2161', cureIn: 'hours' }, 'cure'],
    [{ cure: 'two' }, 'cure'],
    [{ cure: '1.5' }, 'cure'],
    [{ cure: '-2' }, 'cure'],
    [{ cureIn: 'weeks' }, 'cureIn'],
    [{ board: '   ' }, 'board'],
    [{ adhesive: '' }, 'adhesive'],
    [{ finishedAt: '25:00' }, 'finishedAt'],
    [{ finishedOn: '2026-02-29' }, 'finishedOn'],
    [{ room: 'warm' }, 'room'],
    [{ room: '999' }, 'room'],
    [{ room: '61', scale: 'C' }, 'room'],
    [{ note: 'x'.repeat(1_001) }, 'note'],
  ])('does not take %j', (change, field) => {
    const read = assemblyInput.safeParse({ ...typed, ...change });
    expect(read.error?.issues.map(({ path }) => path.join('.'))).toEqual([field]);
  });

  test.each([
    ['1', 'hours'],
    ['2160', 'hours'],
    ['90', 'days'],
  ])('takes %s %s', (cure, cureIn) => {
    expect(assemblyInput.safeParse({ ...typed, cure, cureIn }).success).toBe(true);
  });
});
