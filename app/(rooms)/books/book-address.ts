import { monthOf, monthRange, addDays, parseMonth, type Day, type Month } from '@/lib/dates/rules';

/** The address of the books as Next hands it over. */
export type BooksQuery = Readonly<Record<string, string | string[] | undefined>>;

/** Which month is open, up to which day it is reckoned, and which page of the journal. */
export type BooksPlace = Readonly<{ month: Month; on: Day; page: number }>;

/** Reads the books' address; a month still to come, or none, opens the one it is now. */
export function readBooksPlace(query: BooksQuery, today: Day): BooksPlace {
  const text = (name: string) => [query[name] ?? ''].flat()[0] ?? '';
  const asked = parseMonth(text('month'));
  const month = asked && asked <= monthOf(today) ? asked : monthOf(today);
  const lastOn = addDays(monthRange(month).untilOn, -1);
  const page = /^[1-9]\d{0,5}$/.test(text('page')) ? Number(text('page')) : 1;
  return { month, on: lastOn < today ? lastOn : today, page };
}
