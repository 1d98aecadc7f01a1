import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { termsOn, type CarrierTerms } from '@/lib/sending/rules/carriers';
import { termsOf } from './stored';

/** All terms of carriers that were written down: by name, and of each the newest first. */
export async function listCarrierTerms(actor: Actor): Promise<CarrierTerms[]> {
  assertAllowed(actor, 'settings.keep');
  return readTerms();
}

/** The terms that hold on a day, by name: those that a shipment can go by. */
export async function listTermsOn(actor: Actor, on: Day): Promise<CarrierTerms[]> {
  assertAllowed(actor, 'sending.do');
  return termsOn(await readTerms(), on);
}

async function readTerms(): Promise<CarrierTerms[]> {
  const rows = await db().carrierRule.findMany({
    orderBy: [{ name: 'asc' }, { holdsFromOn: 'desc' }],
  });
  return rows.map(termsOf);
}
