import { absorptionOf } from '@/lib/clay/rules/absorption';
import type { BodyFacts } from './frost';

/**
 * What is known of a clay body, in one line: its class by the water it takes up, and its test.
 *
 * @source classes: ANSI A137.1; test: ASTM C1026
 * @example 'vitreous; not tested in frost', and for nothing known 'water it takes up not known yet;
 *   whether it was tested in frost not known yet'
 */
export function bodySentence({ absorptionPercent, frostTested }: BodyFacts): string {
  const absorption = absorptionPercent === null ? null : absorptionOf(absorptionPercent);
  const kind = absorption?.ok ? absorption.value.class : 'water it takes up not known yet';
  return `${kind}; ${testWords(frostTested)}`;
}

function testWords(frostTested: boolean | null): string {
  if (frostTested === null) return 'whether it was tested in frost not known yet';
  return frostTested ? 'tested in frost' : 'not tested in frost';
}
