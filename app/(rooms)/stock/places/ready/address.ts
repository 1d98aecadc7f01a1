import { readReady, writeReady, type ReadyPiece } from '@/lib/stock/rules/moves/move';

/** The address of a page on which pieces lie ready: what lies there, and what goes with it. */
export type ReadyAddress = Readonly<{
  path: string;
  /** Chosen before, such as from where and to where; it travels along. */
  kept: Readonly<Record<string, string>>;
  ready: readonly ReadyPiece[];
  find: string;
  page: number;
}>;

/** The address as Next hands it over. */
export type Query = Readonly<Record<string, string | string[] | undefined>>;

/** One value of an address; the first where it stands there twice. */
export function textOf(query: Query, name: string): string {
  return [query[name] ?? ''].flat()[0] ?? '';
}

/** An id of an address; empty where it is none. */
export function idOf(query: Query, name: string): string {
  return /^[0-9a-f-]{36}$/.exec(textOf(query, name))?.[0] ?? '';
}

/** Reads what lies ready, what is looked for and which leaf; what does not belong is left out. */
export function readAddress(
  path: string,
  query: Query,
  kept: Readonly<Record<string, string>>,
): ReadyAddress {
  const page = Number(/^[1-9]\d{0,3}$/.exec(textOf(query, 'page'))?.[0] ?? '1');
  const find = textOf(query, 'find').slice(0, 80);
  return { path, kept, ready: readReady(textOf(query, 'ready').slice(0, 2_400)), find, page };
}

/** The address with other pieces lying ready; what was looked for is left behind. */
export function readyHref(
  address: Pick<ReadyAddress, 'path' | 'kept'>,
  ready: readonly ReadyPiece[],
  page = 1,
): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(address.kept)) if (value) query.set(name, value);
  if (ready.length > 0) query.set('ready', writeReady(ready));
  if (page > 1) query.set('page', String(page));
  const text = query.toString().replaceAll('%2A', '*').replaceAll('%7E', '~');
  return text === '' ? address.path : `${address.path}?${text}`;
}
