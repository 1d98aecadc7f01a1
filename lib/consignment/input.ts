import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { percentInput, someCentsInput } from '@/lib/money/input';
import { parseCents, moneyRefusalMessage } from '@/lib/money/rules';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { paperNote } from '@/lib/stock/input/places';
import { readReady } from '@/lib/stock/rules/moves/move';
import { bearers, type DiscountTold } from './rules';

const sharePercent = percentInput.refine(isShare, {
  message: 'Write their share as more than 0 and less than 100, with at most two decimals.',
});

function isShare(text: string): boolean {
  const decimal = parseDecimal(text);
  if (!decimal || decimal.scale > 2) return false;
  return decimal.units > 0n && decimal.units < 100n * 10n ** BigInt(decimal.scale);
}

const terms = {
  sharePercent,
  payDays: z
    .string()
    .trim()
    .regex(/^\d{1,3}$/, 'Write a whole number of days.')
    .transform(Number)
    .refine((days) => days <= 365, 'That is more than a year. Write at most 365 days.'),
  terms: z.string().trim().max(2_000, 'Keep the terms to 2,000 characters.').prefault(''),
};

/** The form that begins with another gallery. */
export const beginWithGalleryInput = z.object({
  requestKey: z.uuid(),
  collectorId: z.union([z.uuid(), z.literal('')]).prefault(''),
  sinceOn: dayInput,
  ...terms,
});

/** The form that changes what was agreed; papers that were made keep what stood then. */
export const changeTermsInput = z.object({
  requestKey: z.uuid(),
  consigneeId: z.uuid(),
  ...terms,
});

/** The form that ends it with another gallery. */
export const endWithGalleryInput = z.object({ requestKey: z.uuid(), consigneeId: z.uuid() });

/** The form that sends what lies ready to another gallery, or takes it back from there. */
export const consignInput = z.object({
  requestKey: z.uuid(),
  consigneeId: z.uuid(),
  /** Sending: where they come from; back: where they go. One of our own places. */
  placeId: z.union([z.uuid(), z.literal('')]).prefault(''),
  ready: z.string().max(2_400).prefault('').transform(readReady),
  note: paperNote,
});

/** The most lines of one statement. */
export const statementLinesMost = 60;

/**
 * A discount as a person writes it: `38.00`, or `10%` of the retail price. Nothing is none.
 *
 * @example discountInput.parse('10%') // { percent: '10' }
 */
export const discountInput = z
  .string()
  .trim()
  .max(24, 'Write an amount such as 38.00, or a share such as 10%.')
  .prefault('')
  .transform((text, context): DiscountTold | null => {
    if (text === '') return null;
    if (text.endsWith('%')) {
      const percent = percentInput.safeParse(text.slice(0, -1));
      if (percent.success) return { percent: percent.data };
      context.addIssue({ code: 'custom', message: 'Write the share from 0% to 100%.' });
      return z.NEVER;
    }
    const read = parseCents(text);
    if (read.ok) return { cents: read.value };
    context.addIssue({ code: 'custom', message: moneyRefusalMessage(read.refusal) });
    return z.NEVER;
  });

const lineInput = z.object({
  /** As on the tag, in capitals. */
  sku: z.string().max(24),
  number: z
    .union([z.literal(''), z.string().regex(/^[1-9]\d{0,3}$/)])
    .prefault('')
    .transform((text) => (text === '' ? null : Number(text))),
  quantity: z
    .string()
    .trim()
    .regex(/^[1-9]\d{0,2}$/, 'Write how many they sold, from 1 to 999.')
    .transform(Number),
  soldOn: dayInput,
  retail: someCentsInput,
  discount: discountInput,
  borneBy: z.enum(
    bearers.map((each) => each.bearer),
    { error: 'Choose who bears it.' },
  ),
});

/** The form that writes down what another gallery sold: fields `lines.0.soldOn` and so on. */
export const reportSoldInput = z.preprocess(
  gatherLines,
  z.object({
    requestKey: z.uuid(),
    consigneeId: z.uuid(),
    fromOn: dayInput,
    untilOn: dayInput,
    lines: z.array(lineInput).max(statementLinesMost),
  }),
);

/** Fields named `lines.<place>.<field>` become a list of lines, in their order. */
function gatherLines(form: unknown): unknown {
  if (typeof form !== 'object' || form === null || 'lines' in form) return form;
  const lines: (Record<string, unknown> | undefined)[] = [];
  const rest: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(form)) {
    const match = /^lines\.(\d{1,2})\.(\w+)$/.exec(name);
    if (!match) {
      rest[name] = value;
      continue;
    }
    const place = Number(match[1]);
    const line = lines[place] ?? {};
    line[match[2] ?? ''] = value;
    lines[place] = line;
  }
  return { ...rest, lines: Array.from(lines, (line) => line ?? {}) };
}

/** See {@link beginWithGalleryInput}. */
export type BeginWithGalleryInput = z.output<typeof beginWithGalleryInput>;
/** See {@link changeTermsInput}. */
export type ChangeTermsInput = z.output<typeof changeTermsInput>;
/** See {@link endWithGalleryInput}. */
export type EndWithGalleryInput = z.output<typeof endWithGalleryInput>;
/** See {@link consignInput}. */
export type ConsignInput = z.output<typeof consignInput>;
/** See {@link reportSoldInput}. */
export type ReportSoldInput = z.output<typeof reportSoldInput>;
