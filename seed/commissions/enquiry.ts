import type { BodyFields } from '@/lib/commissions/writes/enquiry/body';
import { addBody } from '@/lib/commissions/writes/enquiry/body';
import { addWhatIsKnown, type KnownNow } from '@/lib/commissions/writes/request';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok } from '@/lib/platform/result';
import { gallery } from '@/seed/scenario/gallery';
import type { SetUp } from '@/seed/set-up';

/** The studio's clays, invented: one for the weather, one for indoors, one nobody measured. */
const bodies: readonly BodyFields[] = [
  {
    ...{ name: 'Shore white, cone 6', absorptionPercent: '0.9', shrinkagePercent: '12.5' },
    ...{ densityGPerCm3: '2.3', frostTested: true, note: 'For all that hangs outside.' },
    centsPerKg: '132',
  },
  {
    ...{ name: 'Kelp buff, cone 04', absorptionPercent: '9.4', shrinkagePercent: '7' },
    ...{ densityGPerCm3: '1.9', frostTested: false, note: 'For indoors: it drinks.' },
    centsPerKg: '96.5',
  },
  {
    ...{ name: 'Headland red, cone 3', absorptionPercent: null, shrinkagePercent: null },
    ...{ densityGPerCm3: null, frostTested: null, note: 'New bags; bars are in the next firing.' },
  },
];

const nobodyYet = {
  ...{ asksReferral: null, broughtLetters: null, broughtById: null },
  ...{ broughtPercent: null, broughtKnown: null },
} as const;

type Known = Pick<KnownNow, 'fields' | 'referral'> & { title: string; body: string | null };

const known: readonly Known[] = [
  {
    title: 'Breakfast room wall',
    body: 'Shore white, cone 6',
    fields: {
      ...{ decides: 'Both owners, together', pays: 'The inn', wallOwner: 'The inn' },
      ...{ isDeadline: false, wishedWhy: 'The season opens', forFood: false, sun: 'some' },
      ...{ access: 'Ferry dock, then two steps; the kitchen door is 34 in wide.' },
      ...{ foundUs: 'A guest brought a platter', freezes: true },
    },
    referral: {
      ...{ asksReferral: 'yes', broughtLetters: 'Studio Halloran & Vane', broughtById: null },
      ...{ broughtPercent: '7.5', broughtKnown: true },
    },
  },
  {
    title: 'Barnacle door surround',
    body: 'Kelp buff, cone 04',
    fields: { decides: 'Dougal Finnhaven', freezes: true, sun: 'full', wallOwner: 'His own' },
    referral: { ...nobodyYet, asksReferral: 'yes', broughtPercent: '0' },
  },
  {
    title: 'Nine herons',
    body: 'Headland red, cone 3',
    fields: { pays: 'Imogen Achterberg', wishedWhy: 'Her mother’s ninetieth', isDeadline: true },
    referral: nobodyYet,
  },
];

/** Writes the studio's clays down, and what became known of three requests. */
export async function playEnquiry(demo: { today: Day; setUp: SetUp }): Promise<void> {
  const at = instantOf(addDays(demo.today, -1), '15:20', gallery.timeZone);
  const doer = { actor: demo.setUp.owner, at };
  const done = await inTransaction(async (tx) => {
    const ids = new Map<string, string>();
    for (const body of bodies) {
      const kept = await addBody(tx, doer, body);
      if (!kept.ok) return kept;
      ids.set(body.name, kept.value.bodyId);
    }
    for (const { title, body, fields, referral } of known) {
      const commission = await tx.commission.findFirst({ where: { title } });
      if (!commission) continue;
      const bodyId = body === null ? null : (ids.get(body) ?? null);
      const now = { commissionId: commission.id, fields: { ...fields, bodyId }, referral };
      const told = await addWhatIsKnown(tx, doer, now);
      if (!told.ok) return told;
    }
    return ok(true as const);
  });
  invariant(done.ok, 'The demo is not refused.');
}
