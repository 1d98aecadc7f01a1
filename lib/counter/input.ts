import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { percentInput, someCentsInput } from '@/lib/money/input';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { DiscountAsked, SlipChange } from './rules/change';
import { slipMost, type LineToPut } from './rules/slip';

const aCard =
  'That looks like the number of a card, which is never kept. Write it without, please.';

/** Free words of the slip: at most so many signs, and no card's number among them. */
function freeWords(most: number) {
  return z
    .string()
    .trim()
    .max(most, `At most ${most} letters, please.`)
    .refine((text) => !looksLikeCardNumber(text), aCard);
}

function saidWords(most: number, asked: string) {
  return freeWords(most).refine((text) => text !== '', asked);
}

const wholeNumber = z
  .string()
  .trim()
  .regex(/^\d{1,9}$/, 'Write a whole number.')
  .transform(Number);
const count = wholeNumber.refine(
  (number) => number >= 1 && number <= slipMost.quantity,
  `Write how many: 1 to ${slipMost.quantity}.`,
);
const nobody = z.literal('').transform(() => null);
const whom = z.union([nobody, z.uuid()]);

const onSlip = { requestKey: z.uuid(), slipId: z.uuid() };

/** What was scanned or typed at the counter; `here` when the page that is open goes on by itself. */
export const scanInput = z.object({
  ...onSlip,
  find: z.string().trim().max(80),
  here: z.literal('1').optional(),
});

/** A piece or a set that was touched: `sku` or `set`, and its id. */
export const touchInput = z
  .object({ ...onSlip, put: z.string().regex(/^(?:sku|set):[0-9a-f-]{36}$/) })
  .transform(({ put, ...form }): typeof form & { line: LineToPut } => {
    const id = put.slice(4);
    const line: LineToPut = put.startsWith('sku')
      ? { kind: 'piece', skuId: id, quantity: 1 }
      : { kind: 'set', setId: id, quantity: 1 };
    return { ...form, line };
  });

const typedLine = z
  .object({
    ...onSlip,
    add: z.enum(['goods', 'design_work', 'shipping', 'installation']),
    words: freeWords(slipMost.words).default(''),
    amount: someCentsInput,
    quantity: count.default(1),
  })
  .transform(({ add, words, amount: cents, quantity, ...form }, context) => {
    if (add === 'shipping' || add === 'installation') {
      const said = words === '' ? whatItIs[add] : words;
      return { ...form, line: { kind: add, words: said, cents } satisfies LineToPut };
    }
    if (words === '') {
      context.addIssue({ code: 'custom', path: ['words'], message: 'Say what it is.' });
      return z.NEVER;
    }
    const line: LineToPut = { kind: 'typed', words, cents, quantity, taxKind: add };
    return { ...form, line };
  });

const whatItIs = { shipping: 'Freight', installation: 'Installation' } as const;

const voucherLine = z
  .object({
    ...onSlip,
    add: z.literal('voucher'),
    amount: someCentsInput,
    forWhom: freeWords(slipMost.words).default(''),
  })
  .transform(({ add, amount: cents, forWhom, ...form }): typeof form & { line: LineToPut } => ({
    ...form,
    line: { kind: add, cents, forWhom },
  }));

/** Something without a tag: a typed-in line, freight, installation, a voucher. */
export const addLineInput = z.discriminatedUnion('add', [voucherLine, typedLine]);

/** A payment for a commission, by the commission's number. */
export const paymentLineInput = z.object({
  ...onSlip,
  commission: wholeNumber,
  amount: someCentsInput,
});

const discount = z
  .object({
    does: z.literal('discount'),
    on: z.union([z.literal('slip'), z.uuid()]),
    as: z.enum(['percent', 'amount'], { error: 'Say whether it is in 100 or in dollars.' }),
    much: z.string().trim(),
    reason: saidWords(slipMost.words, 'Say why, so that the month can be understood.'),
  })
  .transform(({ does, on, as, much, reason }, context) => {
    const lineId = on === 'slip' ? null : on;
    const read = (as === 'percent' ? percentInput : someCentsInput).safeParse(much);
    if (!read.success || /^0*\.?0*$/.test(much)) {
      const message = read.error?.issues[0]?.message ?? 'Write more than nothing.';
      context.addIssue({ code: 'custom', path: ['much'], message });
      return z.NEVER;
    }
    const asked: DiscountAsked =
      typeof read.data === 'bigint'
        ? { way: 'amount', cents: read.data, reason }
        : { way: 'percent', percent: read.data, reason };
    return { does, lineId, discount: asked };
  });

const noDiscount = z
  .object({ does: z.literal('no_discount'), on: z.union([z.literal('slip'), z.uuid()]) })
  .transform(({ on }) => ({
    ...{ does: 'discount' as const, discount: null },
    lineId: on === 'slip' ? null : on,
  }));

const deliver = z
  .object({
    does: z.literal('deliver'),
    way: z.enum(['taken', 'sent', 'installed'], { error: 'Say how it leaves.' }),
    to: freeWords(slipMost.note).default(''),
    taxPlaceId: z.union([nobody, z.uuid()]).default(null),
  })
  .transform(({ does, way, to, taxPlaceId }, context) => {
    if (way === 'taken') return { does, delivery: { way } };
    if (to === '') {
      context.addIssue({ code: 'custom', path: ['to'], message: 'Write where it goes.' });
    }
    if (taxPlaceId === null) {
      const message = 'Choose the place whose sales tax applies there.';
      context.addIssue({ code: 'custom', path: ['taxPlaceId'], message });
      return z.NEVER;
    }
    return { does, delivery: { way, to, taxPlaceId } };
  });

const yes = z.enum(['yes', 'no']).transform((word) => word === 'yes');

const change = z.discriminatedUnion('does', [
  discount,
  noDiscount,
  deliver,
  z.object({
    ...{ does: z.literal('numbers'), lineId: z.uuid() },
    numbers: z.union([wholeNumber.transform((one) => [one]), z.array(wholeNumber)]).default([]),
  }),
  z
    .object({
      ...{ does: z.literal('collect'), untilOn: dayInput },
      note: freeWords(slipMost.note).default(''),
    })
    .transform(({ does, untilOn, note }) => ({ does, collect: { untilOn, note } })),
  z
    .object({ does: z.literal('no_collect') })
    .transform(() => ({ does: 'collect' as const, collect: null })),
  z
    .object({
      does: z.literal('gift'),
      to: freeWords(slipMost.words).default(''),
      words: freeWords(slipMost.note).default(''),
    })
    .transform(({ does, to, words }) => ({
      does,
      gift: to === '' && words === '' ? null : { to, words },
    })),
  z.object({ does: z.literal('trade'), atTradePrice: yes }),
  z.object({ does: z.literal('resale'), forResale: yes }),
  z.object({ does: z.literal('referred'), collectorId: whom }),
  z.object({ does: z.literal('name'), collectorId: whom }),
  z.object({ does: z.literal('place'), placeId: z.uuid() }),
  z.object({
    does: z.literal('aside'),
    asideAs: saidWords(slipMost.words, 'Say under which words you will find it again.'),
  }),
  z
    .object({ does: z.literal('take_up') })
    .transform(() => ({ does: 'aside' as const, asideAs: null })),
]);

const state = z.object({ ...onSlip, version: wholeNumber });

/** A change of the slip: what it does, and the state of the slip that was shown. */
export const changeInput = state
  .and(change)
  .transform(({ requestKey, slipId, version, ...asked }) => ({
    ...{ requestKey, slipId, version },
    change: asked,
  }));

/** One more, one less, or off: a button beside a line sends the line's id. */
export const countInput = state
  .extend({ less: z.uuid(), more: z.uuid(), off: z.uuid() })
  .partial({ less: true, more: true, off: true })
  .transform(({ less, more, off, ...form }) => {
    const does = off === undefined ? (less === undefined ? 'more' : 'less') : 'off';
    const change: SlipChange = { does, lineId: off ?? less ?? more ?? '' };
    return { ...form, change };
  });

/** A slip that is thrown away. */
export const throwInput = z.object({ slipId: z.uuid() });
