import { notAllowedMessage } from '@/lib/access/rules';
import type { AnyRefusal } from '@/lib/installation/rules/diary/words';

/** Why nothing was kept of who works when, or of a way. */
export type CrewRefusal =
  | { code: 'nobody_of_that_name' }
  | { code: 'no_such_absence' }
  | { code: 'withdrawn_before' }
  | { code: 'same_place' };

const sentences: Readonly<Record<CrewRefusal['code'], string>> = {
  nobody_of_that_name: 'Choose somebody who works here.',
  no_such_absence: 'That absence is not written down.',
  withdrawn_before: 'It was taken back before.',
  same_place: 'Those two are the same place; between them there is no way.',
};

/** Says in a full sentence why nothing was kept. */
export function crewRefusalMessage(refusal: CrewRefusal | AnyRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  return sentences[refusal.code];
}
