import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { handOverNote, type HandOverFacts } from '@/lib/commissions/rules/agreement/hand-over';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { signatureOf, signatureSelect, type SignatureShown } from './agreements';
import { readHandOverFacts } from './hand-over';

/** The hand-over as a paper: what is known of the piece, and what was signed, once it was. */
export type HandOverPaper = {
  facts: HandOverFacts;
  /** Null before it is handed over. */
  handed: {
    handedOn: Day;
    signedBy: string;
    body: string;
    /** Null, as the signature, where it was handed over without one. */
    contentSha256: string | null;
    signature: SignatureShown | null;
  } | null;
};

/** The hand-over of a commission as a paper, for those who work here. */
export async function findHandOverPaper(
  actor: Actor,
  commissionId: string,
): Promise<HandOverPaper> {
  assertAllowed(actor, 'commissions.see');
  const facts = await readHandOverFacts(db(), commissionId);
  const row = await db().handOver.findUnique({
    where: { commissionId },
    select: {
      ...{ handedOn: true, signedBy: true, remarks: true },
      signature: { select: { ...signatureSelect, statement: true, contentSha256: true } },
    },
  });
  if (!row) return { facts, handed: null };
  const { signedBy, remarks, signature } = row;
  const handedOn = dayFromDate(row.handedOn);
  const said = { ...facts, takenBy: signedBy, handedOn, remarks };
  const body = signature?.statement ?? handOverNote(said);
  return {
    facts,
    handed: {
      ...{ handedOn, signedBy, body },
      contentSha256: signature?.contentSha256 ?? null,
      signature: signature && signatureOf(signature),
    },
  };
}
