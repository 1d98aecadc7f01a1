import { formatInstant } from '@/lib/dates/rules';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import type { CoolBy } from '@/lib/studio/rules/firings/curve';
import { outcomeCount, outcomes, type Outcome } from '@/lib/studio/rules/firings/opening';
import type { FiringStand } from '@/lib/studio/rules/firings/planning';
import { checkCone } from '@/lib/studio/rules/firings/schedule';
import { piecesWords } from '@/lib/studio/rules/words';
import { climbInFahrenheit, degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { lossCauseWords } from '@/lib/studio/rules';
import type { ResultTold } from '@/lib/studio/reads/firings/firing';

/** How far a firing has come, in words. */
export const standWords: Readonly<Record<FiringStand, string>> = {
  planned: 'planned',
  lit: 'in the kiln',
  opened: 'opened',
  called_off: 'called off',
};

/** How pieces came out: `all 24 good`, `20 good, 1 lost`. */
export function cameWords(came: Readonly<Record<Outcome, number>>): string {
  const others = came.second + came.fire_again + came.lost;
  if (others === 0) return came.good === 1 ? 'good' : `all ${came.good} good`;
  return outcomes
    .flatMap((outcome) => (came[outcome] === 0 ? [] : outcomeCount(came[outcome], outcome)))
    .join(', ');
}

/** How pieces of one line came out, with the causes of losses and what was seen. */
export function resultsWords(results: readonly ResultTold[]): string {
  return outcomes
    .flatMap((outcome) => results.filter((result) => result.outcome === outcome))
    .map(({ outcome, pieces, cause, note }) => {
      const why = [cause ? lossCauseWords[cause] : '', note].filter((words) => words !== '');
      return `${outcomeCount(pieces, outcome)}${why.length > 0 ? ` (${why.join(', ')})` : ''}`;
    })
    .join('; ');
}

/** How full a load makes its kiln, as sentences. */
export function fillSentence({ fill, layout }: Pick<FiringTold, 'fill' | 'layout'>): string {
  const laid = layout.shelves.reduce((sum, shelf) => sum + shelf.pieces.length, 0);
  if (laid === 0) return 'Nothing lies in it yet.';
  const shelves = fill.shelvesUsed === 1 ? '1 shelf' : `${fill.shelvesUsed} shelves`;
  return (
    `${piecesWords(laid)} on ${shelves} of ${fill.shelvesPossible} that would go in: ` +
    `${fill.areaPercent}% full by shelf, ${fill.volumePercent}% of the room.`
  );
}

/** What its chart says of a schedule, as sentences; null where it says nothing. */
export function coneSentence(
  { cone, schedule }: Pick<FiringTold, 'cone' | 'schedule'>,
  scale: Scale,
): string | null {
  const check = checkCone(cone, schedule);
  if (!check) return null;
  const { celsius, rateCPerHour, peakC, offByC } = check;
  const chart =
    `At ${climbWords(rateCPerHour, scale)} over the end, cone ${cone} is down at about ` +
    `${degreesWords(celsius, scale)}.`;
  if (offByC === 0) return `${chart} The schedule goes there.`;
  const by = scale === 'F' ? climbInFahrenheit(Math.abs(offByC)) : Math.abs(offByC);
  const where = offByC > 0 ? 'hotter' : 'cooler';
  return `${chart} The schedule goes to ${degreesWords(peakC, scale)}, ${by}° ${where}.`;
}

/** A climb as it is set: `108 °F an hour`. */
export function climbWords(rateCPerHour: number, scale: Scale): string {
  const rate = scale === 'F' ? climbInFahrenheit(rateCPerHour) : rateCPerHour;
  return `${rate} °${scale} an hour`;
}

/** When a kiln will be cool, and what tells it, as a sentence. */
export function coolSentence(cool: CoolBy, zone: string): string {
  const at = formatInstant(cool.at, zone);
  switch (cool.by) {
    case 'its_readings':
      return `Cool enough to open about ${at}, by its last two readings.`;
    case 'earlier_firings':
      return `Cool enough to open about ${at}, as this kiln cooled before.`;
    case 'common_practice':
      return `Cool enough to open about ${at}: two days are common. Two readings on the way down tell it better.`;
  }
}
