import { z } from 'zod';
import { readChosen, writeChosen, type Chosen } from '@/lib/holds/rules/chosen';

/** What a page's address may carry; anything else is left out. */
export type ChoosingQuery = Readonly<Record<string, string | string[] | undefined>>;

/** What was chosen so far for a hold, a layaway or a slip: pieces, and for whom. */
export type Choosing = Readonly<{
  pieces: readonly Chosen[];
  collectorId: string | null;
  /** Letters typed to find another piece; null when nobody looks. */
  find: string;
  /** Letters typed to find a collector; null when nobody looks. */
  who: string | null;
  /** A hold that ends when this is written. */
  holdId: string;
}>;

const lettersMost = 80;

/** Reads from the address what was chosen so far. */
export function readChoosing(query: ChoosingQuery): Choosing {
  const collector = z.uuid().safeParse(query['for']);
  const hold = z.uuid().safeParse(query['hold']);
  const who = textOf(query['who']);
  return {
    pieces: readChosen(textOf(query['pieces']) ?? ''),
    collectorId: collector.success ? collector.data : null,
    find: textOf(query['find']) ?? '',
    who,
    holdId: hold.success ? hold.data : '',
  };
}

/** The address of a page with what was chosen; letters that were typed are dropped. */
export function choosingHref(
  base: string,
  choosing: Choosing,
  over: Partial<Choosing> = {},
): string {
  const { pieces, collectorId, holdId, who, find } = {
    ...{ ...choosing, who: null, find: '' },
    ...over,
  };
  const query = new URLSearchParams();
  if (pieces.length > 0) query.set('pieces', writeChosen(pieces));
  if (collectorId !== null) query.set('for', collectorId);
  if (holdId !== '') query.set('hold', holdId);
  if (who !== null) query.set('who', who);
  if (find !== '') query.set('find', find);
  const text = query.toString();
  return text === '' ? base : `${base}?${text}`;
}

function textOf(sent: string | string[] | undefined): string | null {
  return typeof sent === 'string' ? sent.slice(0, lettersMost * 10) : null;
}
