import type { ConditionWhen } from './condition';
import type { EventKind } from './words';

/** What belongs to the file of a claim, and whether it is there. */
export type InTheFile = { readonly words: string; readonly isThere: boolean };

/** What is looked through for the file of a claim. */
export type FileFacts = {
  readonly reports: readonly { when: ConditionWhen; views: readonly unknown[] }[];
  readonly boxes: readonly { scaleG: number | null }[];
  readonly events: readonly { kind: EventKind; words: string }[];
  readonly tracking: string;
  readonly insuredCents: bigint;
};

/**
 * What belongs to the file of a claim: how it looked before and after with pictures, weights from the
 * scale, the carrier’s number, what was remarked at the door, pictures of the damage, its worth.
 *
 * @source common practice: claims fail for packing and for want of proof more than for anything else
 */
export function claimFile(facts: FileFacts, claim: { pictures: readonly unknown[] }): InTheFile[] {
  const looked = (when: ConditionWhen) =>
    facts.reports.some((report) => report.when === when && report.views.length > 0);
  const remarked = facts.events.some(({ kind, words }) => kind === 'arrived' && words !== '');
  return [
    { words: 'How it looked as it left, with pictures', isThere: looked('out') },
    { words: 'How it looked as it came, with pictures', isThere: looked('in') },
    {
      words: 'Weights from the scale',
      isThere: facts.boxes.length > 0 && facts.boxes.every(({ scaleG }) => scaleG !== null),
    },
    { words: 'The carrier’s number', isThere: facts.tracking !== '' },
    { words: 'What was remarked on the delivery receipt', isThere: remarked },
    { words: 'Pictures of the damage', isThere: claim.pictures.length > 0 || looked('in') },
    { words: 'What it is worth', isThere: facts.insuredCents > 0n },
  ];
}
