import type { Goes, Neighbour } from '@/lib/installation/rules/diary/questions';
import { overlap, type Span } from '@/lib/installation/rules/diary/kinds';

/** Somebody with all that they have in the diary within a stretch, earliest first. */
export type Busy = Omit<Goes, 'neighbours'> & { readonly busy: readonly Neighbour[] };

/** Somebody as they go along to one appointment: only the last before and the first after count. */
export function goesAround({ busy, ...person }: Busy, span: Span): Goes {
  const before = busy.findLast((one) => one.endsAt <= span.startsAt);
  const after = busy.find((one) => one.startsAt >= span.endsAt);
  return { ...person, neighbours: [before, after].filter((one) => one !== undefined) };
}

/** Whoever has something else in these hours; undefined when all are free. */
export function elsewhereThen(crew: readonly Busy[], span: Span): Busy | undefined {
  return crew.find(({ busy }) => busy.some((one) => overlap(one, span)));
}
