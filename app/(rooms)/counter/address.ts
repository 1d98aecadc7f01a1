import { readSlip, writeSlip, type SlipEntry } from '@/lib/sales/rules/slip';

/** What the counter's address keeps: the slip, what is looked for, whom it is for. */
export type CounterPlace = Readonly<{
  slip: readonly SlipEntry[];
  find: string;
  /** Letters are still being typed: nothing goes onto the slip by itself. */
  typing: boolean;
  /** The collector whose name goes on the receipt. */
  collectorId: string | null;
  /** Letters of the collector who is looked for; null when nobody is. */
  who: string | null;
  /** The receipt of the sale that was just made. */
  soldNumber: number | null;
  /** A piece that could not go onto the slip, because there are no more. */
  shortOf: string | null;
}>;

/** The address as Next hands it over. */
export type CounterQuery = Readonly<Record<string, string | string[] | undefined>>;

/** Reads the counter's address; what does not belong there is left out. */
export function readPlace(query: CounterQuery): CounterPlace {
  const text = (name: string) => [query[name] ?? ''].flat()[0] ?? '';
  const sold = /^\d{1,9}$/.exec(text('sold'));
  const collector = /^[0-9a-f-]{36}$/.exec(text('for'));
  return {
    slip: readSlip(text('slip')),
    find: text('find').slice(0, 80),
    typing: text('typing') === '1',
    collectorId: collector ? collector[0] : null,
    who: query['who'] === undefined ? null : text('who').slice(0, 80),
    soldNumber: sold ? Number(sold[0]) : null,
    shortOf: text('short') === '' ? null : text('short').slice(0, 24),
  };
}

/** The counter's address with a slip and whom it is for; what was looked for is left behind. */
export function counterHref(
  place: Pick<CounterPlace, 'slip' | 'collectorId'>,
  more: Readonly<{ short?: string; who?: string }> = {},
): string {
  const query = new URLSearchParams();
  if (place.slip.length > 0) query.set('slip', writeSlip(place.slip));
  if (place.collectorId !== null) query.set('for', place.collectorId);
  for (const [name, value] of Object.entries(more)) query.set(name, value);
  const text = query.toString().replaceAll('%2A', '*');
  return text === '' ? '/counter' : `/counter?${text}`;
}
