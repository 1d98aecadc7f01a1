import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Why the carrier's slip was not kept. */
export type ProofRefusal =
  | NotAllowed
  | PictureRefusal
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_sale' }
  | { code: 'not_sent' }
  | { code: 'sent_before_sold'; soldOn: Day }
  | { code: 'arrived_before_sent'; sentOn: Day };

/** When it was sent and came, as somebody wrote it from the carrier's slip. */
export type ProofDays = { sentOn: Day; arrivedOn: Day | null };

/**
 * Whether the days of a carrier's slip can be right.
 *
 * @returns true; refuses, in this order: sent before it was sold, arrived before it was sent
 * @example sent and arrived on the day of the sale is right: a van round the corner
 */
export function checkProof(
  { sentOn, arrivedOn }: ProofDays,
  soldOn: Day,
): Result<true, ProofRefusal> {
  if (sentOn < soldOn) return refuse({ code: 'sent_before_sold', soldOn });
  if (arrivedOn !== null && arrivedOn < sentOn) {
    return refuse({ code: 'arrived_before_sent', sentOn });
  }
  return ok(true);
}

const plainSentences = {
  key_used_for_something_else:
    'This page was sent before with something else in it. Load it again, please.',
  unknown_sale: 'No receipt has that number.',
  not_sent: 'These pieces were not sent, so there is no carrier’s slip.',
} as const;

type PlainRefusal = { code: keyof typeof plainSentences };

/** Says in a full sentence why the carrier's slip was not kept. */
export function proofRefusalMessage(refusal: ProofRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'sent_before_sold') {
    const soldOn = formatDay(refusal.soldOn, 'short');
    return `It was sold on ${soldOn}; it cannot have been sent before.`;
  }
  if (refusal.code === 'arrived_before_sent') {
    const sentOn = formatDay(refusal.sentOn, 'short');
    return `It was sent on ${sentOn}; it cannot have arrived before.`;
  }
  return isPlain(refusal) ? plainSentences[refusal.code] : pictureRefusalMessage(refusal);
}

function isPlain(refusal: PictureRefusal | PlainRefusal): refusal is PlainRefusal {
  return refusal.code in plainSentences;
}

/** The sentence, and the field of its form at which it stands. */
export function proofRefusalWords(refusal: ProofRefusal): {
  message: string;
  fields: Record<string, string>;
} {
  const message = proofRefusalMessage(refusal);
  if (refusal.code === 'sent_before_sold') return { message, fields: { sentOn: message } };
  if (refusal.code === 'arrived_before_sent') return { message, fields: { arrivedOn: message } };
  return { message, fields: {} };
}
