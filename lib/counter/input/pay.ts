import { z } from 'zod';
import { centsInput, someCentsInput } from '@/lib/money/input';
import type { Cents } from '@/lib/money/rules';
import type { TenderOffered } from '@/lib/sales/rules/tenders';

/** The most ways in which one slip is paid. */
export const waysMost = 12;

/** The ways that a row of the slip's payment offers. */
export const tenderWays = ['cash', 'card', 'cheque', 'bank_transfer', 'credit'] as const;

/** The longest reference or voucher number, in signs. */
const noteMost = 40;

const rows = Array.from({ length: waysMost }, (_none, at) => at + 1);
const reference = z
  .string()
  .trim()
  .max(noteMost, 'The slip number of the card terminal has at most 40 signs.')
  .default('');
const text = z.string().trim().max(40).default('');

const payForm = z
  .object({
    requestKey: z.uuid(),
    slipId: z.uuid(),
    version: z
      .string()
      .regex(/^\d{1,9}$/)
      .transform(Number),
    /** The total that was shown, in plain figures. */
    expectedTotal: centsInput,
    paidBy: z.enum(['cash', 'card', 'several', 'nothing'], {
      error: 'Say how it is paid: cash, card, or several ways.',
    }),
    given: text,
    /** The visitor laid down exactly the total. */
    justRight: z.literal('yes').optional(),
    reference,
  })
  .loose();

/**
 * The form that sells a slip: text in; the slip, its state, the total that was shown and the tenders
 * out. An amount that is left empty takes what is left.
 *
 * @example paidBy 'cash' and given '20' give one cash tender of 2000 cents
 */
export const payInput = payForm.transform((form, context) => {
  const { requestKey, slipId, version: slipVersion, expectedTotal: expectedTotalCents } = form;
  const tenders: TenderOffered[] = [];
  const say = (field: string, message: string) => {
    context.addIssue({ code: 'custom', path: [field], message });
  };
  if (form.paidBy === 'card') {
    tenders.push({ kind: 'card', amountCents: null, reference: form.reference });
  }
  if (form.paidBy === 'cash') {
    const givenCents = form.justRight ? null : amountOf(form.given, 'given', say);
    if (!form.justRight && form.given === '') {
      say('given', 'Write what the visitor gave you, or say that it is just right.');
    }
    tenders.push({ kind: 'cash', givenCents });
  }
  if (form.paidBy === 'several') tenders.push(...severalOf(form, say));
  return { requestKey, slipId, slipVersion, tenders, expectedTotalCents };
});

type Say = (field: string, message: string) => void;

function severalOf(form: Readonly<Record<string, unknown>>, say: Say): TenderOffered[] {
  return rows.flatMap((row) => tenderOf(row, form, say));
}

function tenderOf(row: number, form: Readonly<Record<string, unknown>>, say: Say): TenderOffered[] {
  const [chosen = '', typed = '', note = ''] = ['way', 'amount', 'note'].map((name) => {
    const field = form[`${name}${row}`];
    return typeof field === 'string' ? field.trim() : '';
  });
  const way = tenderWays.find((each) => each === chosen);
  if (!way) {
    if (typed !== '') say(`way${row}`, 'Say how this part is paid.');
    return [];
  }
  const amountCents = amountOf(typed, `amount${row}`, say);
  if (way === 'cash') return [{ kind: 'cash', givenCents: amountCents }];
  if (note.length > noteMost) say(`note${row}`, `At most ${noteMost} signs, please.`);
  if (way !== 'credit') return [{ kind: way, amountCents, reference: note }];
  if (note === '') say(`note${row}`, 'Scan the voucher, or write its number.');
  return [{ kind: 'credit', code: note, amountCents }];
}

function amountOf(typed: string, field: string, say: Say): Cents | null {
  if (typed === '') return null;
  const read = someCentsInput.safeParse(typed);
  if (read.success) return read.data;
  say(field, read.error.issues[0]?.message ?? 'Write an amount.');
  return null;
}
