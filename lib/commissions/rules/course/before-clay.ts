import type { Day } from '@/lib/dates/rules';
import {
  approvedOf,
  coloursAreApproved,
  type CommissionFacts,
  type ShownFact,
} from '@/lib/commissions/rules/facts';
import { nextLetter } from '@/lib/commissions/rules/words';
import { areasWithoutYes } from '@/lib/studio/rules/colours';
import { later, ofCollector, ofGallery, ofStudio, type Standing } from './turns';
import type { Where } from './where';

/** What is between the request and the signature; null once it is agreed. */
export function toAgree(facts: CommissionFacts, today: Day): Standing | null {
  if (facts.agreement) return null;
  const openSketch = unanswered(facts.sketches);
  if (openSketch && !approvedOf(facts.sketches)) return sketch(facts);
  return proposed(facts, today);
}

/** From the first figure to the signature: whoever has to say the next word. */
function proposed(facts: CommissionFacts, today: Day): Standing {
  const accepted = facts.proposals.findLast(({ answer }) => answer?.accepted);
  if (accepted?.answer) {
    return {
      ...ofCollector({ key: 'to_sign' }, accepted.answer.on),
      permission: 'commissions.agree',
    };
  }
  const newest = facts.proposals.at(-1);
  const lastYes = approvedOf(facts.sketches)?.approvedOn ?? null;
  const toPropose = (since: Day) =>
    ofGallery({ key: 'to_propose' }, later(since, lastYes), 'commissions.propose');
  if (!newest) return toPropose(facts.askedOn);
  if (newest.answer) return toPropose(newest.answer.on);
  const { version, validUntilOn, sentOn, writtenOn } = newest;
  if (sentOn === null) {
    return ofGallery({ key: 'proposal_to_send', version }, writtenOn, 'commissions.propose');
  }
  if (validUntilOn < today) {
    const where: Where = { key: 'proposal_ran_out', version, validUntilOn };
    return ofGallery(where, validUntilOn, 'commissions.propose');
  }
  const out = ofCollector({ key: 'proposal_out', version, validUntilOn }, sentOn);
  return { ...out, permission: 'commissions.propose' };
}

/** Whose turn a sketch is; null once one is approved. */
export function sketch(facts: CommissionFacts): Standing | null {
  if (approvedOf(facts.sketches)) return null;
  const open = unanswered(facts.sketches);
  if (open) return ofCollector({ key: 'sketch_shown', letter: open.label }, open.shownOn);
  const asked = later(facts.askedOn, facts.agreement?.agreedOn ?? null);
  const since = later(asked, facts.sketches.at(-1)?.changesOn ?? null);
  const letter = nextLetter(facts.sketches.length);
  return ofStudio({ key: 'sketch_to_show', letter }, since, 'commissions.write');
}

/** Whose turn the colours are; null once every area has its yes. */
export function colours(facts: CommissionFacts): Standing | null {
  if (coloursAreApproved(facts)) return null;
  const open = facts.colourTiles.filter(
    ({ approvedOn, changesOn }) => approvedOn === null && changesOn === null,
  );
  const toGive = open.find(({ givenOn }) => givenOn === null);
  if (toGive) {
    const where: Where = { key: 'twin_to_give', number: toGive.label };
    return ofGallery(where, toGive.shownOn, 'commissions.write');
  }
  const shown = open.at(-1);
  if (shown) {
    return ofCollector(
      { key: 'colours_shown', number: shown.label },
      later(shown.shownOn, shown.givenOn),
    );
  }
  return coloursToShow(facts);
}

function coloursToShow(facts: CommissionFacts): Standing {
  const approved = facts.colourTiles.filter(({ approvedOn }) => approvedOn !== null);
  const areas = areasWithoutYes(
    approvedOf(facts.sketches)?.areas ?? [],
    approved.map((tile) => tile.areas),
  );
  const days = [
    approvedOf(facts.sketches)?.approvedOn ?? null,
    approvedOf(facts.colourTiles)?.approvedOn ?? null,
    facts.colourTiles.at(-1)?.changesOn ?? null,
  ];
  const agreedOn = facts.agreement?.agreedOn ?? facts.askedOn;
  const since = days.reduce<Day>((last, day) => later(last, day), agreedOn);
  const number = facts.colourTiles.length + 1;
  return ofStudio({ key: 'colours_to_show', number, areas }, since, 'commissions.write');
}

/** The last one shown, while it has no answer. */
function unanswered(shown: readonly ShownFact[]): ShownFact | undefined {
  const last = shown.at(-1);
  return last?.approvedOn === null && last.changesOn === null ? last : undefined;
}
