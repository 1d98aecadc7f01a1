import { notFound } from 'next/navigation';
import type { Actor } from '@/lib/access/rules';
import { fairNumberInput } from '@/lib/fairs/input';
import { findFair, type FairSheet } from '@/lib/fairs/reads';

/** The address of a fair's pages. */
export type FairAddress = Readonly<{ params: Promise<{ number: string }> }>;

/** The fair that an address names; shows "not here" when there is none. */
export async function readFairOfAddress(
  actor: Actor,
  params: FairAddress['params'],
): Promise<FairSheet> {
  const number = fairNumberInput.safeParse((await params).number);
  const sheet = number.success ? await findFair(actor, number.data) : null;
  return sheet ?? notFound();
}
