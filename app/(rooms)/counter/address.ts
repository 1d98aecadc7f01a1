/** What the counter's address keeps: which slip, what is looked for, what was just told. */
export type CounterPlace = Readonly<{
  slipId: string | null;
  find: string;
  /** Letters are still being typed: they only look. */
  typing: boolean;
  /** Letters of the collector who is looked for; null when nobody is. */
  who: string | null;
  /** The receipt of the sale that was just made. */
  soldNumber: number | null;
  /** A piece that could not go onto the slip, because there are no more. */
  shortOf: string | null;
  /** Somebody changed the slip on another device. */
  changed: boolean;
}>;

/** The address as Next hands it over. */
export type CounterQuery = Readonly<Record<string, string | string[] | undefined>>;

/** Reads the counter's address; what does not belong there is left out. */
export function readPlace(query: CounterQuery): CounterPlace {
  const text = (name: string) => [query[name] ?? ''].flat()[0] ?? '';
  const sold = /^\d{1,9}$/.exec(text('sold'));
  const slip = /^[0-9a-f-]{36}$/.exec(text('slip'));
  return {
    slipId: slip ? slip[0] : null,
    find: text('find').slice(0, 80),
    typing: text('typing') === '1',
    who: query['who'] === undefined ? null : text('who').slice(0, 80),
    soldNumber: sold ? Number(sold[0]) : null,
    shortOf: text('short') === '' ? null : text('short').slice(0, 24),
    changed: text('told') === 'changed',
  };
}

/** The counter's address with a slip; what was looked for is left behind. */
export function counterHref(
  slipId: string | null,
  more: Readonly<Record<string, string>> = {},
): string {
  const query = new URLSearchParams(slipId === null ? more : { slip: slipId, ...more });
  const text = query.toString();
  return text === '' ? '/counter' : `/counter?${text}`;
}
