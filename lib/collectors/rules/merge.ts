import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { tradeWayWords, type TradeTerms } from './trade';

/** Somebody who is to be found the same as another. */
export type ToMerge = Readonly<{
  id: string;
  name: string;
  /** What they get as a designer; null for nothing. */
  terms: Pick<TradeTerms, 'way' | 'percent'> | null;
  /** The name of whom they were found to be the same as before; null for nobody. */
  mergedIntoName: string | null;
}>;

/** Why two were not found to be one, or not set apart again. */
export type MergeRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_collector' }
  | { code: 'same_entry' }
  | { code: 'merged_already'; name: string; into: string }
  | { code: 'terms_differ'; one: string; oneGets: string; other: string; otherGets: string }
  | { code: 'set_apart_already' };

/**
 * Whether one entry of the address book may be laid into another. Two who get different things as
 * designers are not: it must be said first which of it holds.
 *
 * @returns refuses, in this order: one and the same entry, one of them found to be the same as
 *   another already, trade terms that differ
 * @example one with terms and one without // allowed, and the terms hold for both
 */
export function mayMerge(kept: ToMerge, gone: ToMerge): Result<true, MergeRefusal> {
  if (kept.id === gone.id) return refuse({ code: 'same_entry' });
  for (const { name, mergedIntoName: into } of [kept, gone]) {
    if (into !== null) return refuse({ code: 'merged_already', name, into });
  }
  if (kept.terms && gone.terms && !isSame(kept.terms, gone.terms)) {
    return refuse({
      ...{ code: 'terms_differ', one: kept.name, oneGets: termsWords(kept.terms) },
      ...{ other: gone.name, otherGets: termsWords(gone.terms) },
    });
  }
  return ok(true);
}

/** Says in a full sentence why two were not found to be one, or not set apart again. */
export function mergeRefusalMessage(refusal: MergeRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_collector':
      return 'One of the two is no longer in the address book. Open the page again.';
    case 'same_entry':
      return 'That is one and the same entry already. Choose another.';
    case 'merged_already':
      return `${refusal.name} was found to be the same as ${refusal.into} in the meantime. Open the page again.`;
    case 'terms_differ':
      return `${refusal.one} gets ${refusal.oneGets}, ${refusal.other} gets ${refusal.otherGets}. Let the owner settle first which of it holds, at “Certificates and terms”.`;
    case 'set_apart_already':
      return 'These two were set apart already. Open the page again.';
  }
}

/** That one entry was laid into another, and not undone. */
export type Laid = Readonly<{ keptId: string; goneId: string }>;

/**
 * Under which entry each one is looked up, after what was laid into what. An entry stands under
 * itself when nothing says otherwise; those laid into one that was laid into another go with it.
 *
 * @param laid only those that were not undone; each entry is laid into one other at most
 * @example B into A, then A into C: everything of B is looked up under C; undo the second: under A
 */
export function livingOf(
  ids: readonly string[],
  laid: readonly Laid[],
): ReadonlyMap<string, string> {
  const into = new Map(laid.map(({ goneId, keptId }) => [goneId, keptId]));
  const follow = (id: string, seen: readonly string[]): string => {
    const next = into.get(id);
    return next === undefined || seen.includes(next) ? id : follow(next, [...seen, next]);
  };
  return new Map(ids.map((id) => [id, follow(id, [id])]));
}

function isSame(one: Pick<TradeTerms, 'way' | 'percent'>, other: typeof one): boolean {
  return one.way === other.way && Number(one.percent) === Number(other.percent);
}

function termsWords({ way, percent }: Pick<TradeTerms, 'way' | 'percent'>): string {
  return `${tradeWayWords[way]} of ${percent} in 100`;
}
