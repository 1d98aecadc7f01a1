import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Why something about sketches, tiles and the answers to them was not done, with the facts. */
export type ColoursRefusalFacts = {
  newer_shown: { readonly label: string };
  twin_not_given: unknown;
  not_seen_in_hand: unknown;
  round_costs: { readonly round: number; readonly feeCents: Cents };
  round_not_signed: { readonly round: number };
  nothing_asked: unknown;
  given_already: unknown;
  not_approved_yet: unknown;
  not_measured: unknown;
  unknown_batch: unknown;
  unknown_glaze: unknown;
  batch_reserved: { readonly number: number };
  batch_number_taken: unknown;
  batch_kept_for_nobody: unknown;
  unknown_body: unknown;
};

/** Each of them in full sentences. */
export const coloursSentences: Sentences<ColoursRefusalFacts> = {
  newer_shown: ({ label }) =>
    `In the meantime ${label} was shown. Nothing was approved; look at that one first.`,
  twin_not_given: () =>
    'The twin of this tile is not in your hands yet. A picture on a screen is no colour; wait for the tile.',
  not_seen_in_hand: () =>
    'Say that the tile was looked at in the hand, in daylight and in the room. A picture is no colour.',
  round_costs: ({ round, feeCents }) =>
    `This is round ${round} of changes and costs ${formatCents(feeCents)}. Tick that it is agreed, and send it once more.`,
  round_not_signed: ({ round }) =>
    `Round ${round} becomes a change order. Have it signed here, or say that it was signed on paper.`,
  nothing_asked: () => 'Say what is to change: mark a spot, or write it in words.',
  given_already: () => 'The twin was given already.',
  not_approved_yet: () =>
    'A fired colour is held against an approved tile. This one has no yes yet.',
  not_measured: () =>
    'None of the range of this tile was measured, so there is nothing to hold it against.',
  unknown_batch: () => 'There is no such bucket of glaze. Write it down first.',
  unknown_glaze: () => 'That glaze, or that recipe of it, is not in the book. Choose it once more.',
  batch_reserved: ({ number }) => `This bucket is kept for commission ${number}.`,
  batch_number_taken: () => 'There is a bucket of that number already.',
  batch_kept_for_nobody: () => 'This bucket is kept for nobody; anybody may have it.',
  unknown_body: () => 'There is no such clay body. Write it down in the settings first.',
};
