import { z } from 'zod';
import type { Kept } from './store';

/** What became of one sending. */
export type Sending =
  { as: 'kept' } | { as: 'refused'; sentence: string } | { as: 'signed_out' } | { as: 'no_line' };

const answers = z.discriminatedUnion('as', [
  z.object({ as: z.literal('kept') }),
  z.object({ as: z.literal('refused'), sentence: z.string() }),
  z.object({ as: z.literal('signed_out') }),
]);

const patienceMs = 90_000;

/** Sends one entry to the gallery, with its picture. Whatever does not answer as ours is no line. */
export async function sendOne({ entry, picture }: Kept): Promise<Sending> {
  const body = new FormData();
  body.set('entry', JSON.stringify(entry));
  if (picture) body.set('picture', new Blob([picture.bytes], { type: picture.type }), 'picture');
  try {
    const answer = await fetch(`/diary/${entry.appointmentId}/work/send`, {
      ...{ method: 'POST', body, redirect: 'manual', cache: 'no-store' },
      signal: AbortSignal.timeout(patienceMs),
    });
    // The door stands before every address: who is signed out is led to it.
    if (answer.type === 'opaqueredirect') return { as: 'signed_out' };
    const read = answers.safeParse(await answer.json());
    return read.success ? read.data : { as: 'no_line' };
  } catch {
    return { as: 'no_line' };
  }
}
