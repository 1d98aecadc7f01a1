import { absorptionOf } from '@/lib/clay/rules/absorption';
import type { Exposure } from '@/lib/commissions/rules/words';

/** What is known of a fired clay body; null is "not known yet". */
export type BodyFacts = {
  /** Water taken up, decimal text in percent of the dry weight. */
  readonly absorptionPercent: string | null;
  /** Whether a laboratory tested it in frost by ASTM C1026, and it stood. */
  readonly frostTested: boolean | null;
};

/** What frost asks about. */
export type FrostFacts = {
  readonly exposure: Exposure | null;
  readonly freezes?: boolean | null;
  readonly body?: BodyFacts | null;
};

/**
 * What to mind about frost, for a piece outside or under a roof outside.
 *
 * Nothing is said of a piece indoors, and nothing of the body where it never freezes. While nobody
 * knows whether it freezes, the body is spoken of as if it did.
 *
 * @returns the worst first
 * @source classes of absorption: ANSI A137.1 (impervious to 0.5 %, vitreous to 3 %, semi-vitreous to
 *   7 %, non-vitreous above). Test in frost: ASTM C1026, 300 rounds of freezing and thawing, soaked.
 *   3 % is a rule of thumb: tiles below have failed and tiles of 5 to 7 % have stood, so a low figure
 *   alone decides nothing. The drained back: common practice, and the advice of the Tile Council of
 *   North America that standing water still does harm.
 * @example 7.01 % where it freezes is a strong warning, with or without a test; 7 % is a warning
 */
export function frostCautions(facts: FrostFacts): string[] {
  if (facts.exposure !== 'outdoors' && facts.exposure !== 'under_cover') return [];
  const freezes = facts.freezes ?? null;
  if (freezes === false) return facts.exposure === 'outdoors' ? [weather] : [];
  const cautions = bodyCautions(facts.body ?? null);
  if (freezes === null) cautions.push('Find out whether it ever freezes where it will live.');
  return [...cautions, drained];
}

function bodyCautions(body: BodyFacts | null): string[] {
  if (!body) {
    return [
      'No clay body is chosen: in frost an absorbent one bursts. Choose one that a laboratory tested (ASTM C1026).',
    ];
  }
  const { absorptionPercent: percent, frostTested } = body;
  const absorption = percent === null ? null : absorptionOf(percent);
  if (percent === null || !absorption?.ok) return [noFigure, ...untested(frostTested)];
  const kind = absorption.value.class;
  if (kind === 'non-vitreous') {
    return [
      `Do not hang it in frost: this body takes up ${percent} % of water (non-vitreous, above 7 %) and is likely to burst.`,
      ...untested(frostTested),
    ];
  }
  if (kind === 'semi-vitreous') {
    return [
      `This body takes up ${percent} % of water (semi-vitreous, above 3 %): it may not stand frost.`,
      ...untested(frostTested),
    ];
  }
  return untested(frostTested);
}

const noFigure =
  'How much water this body takes up is not known: measure it before anything is promised for outside.';
const weather =
  'Outdoors, let water run off behind it, and use fixings that do not rust: wet walls stain and loosen.';
const drained =
  'In frost even a dense body is harmed by water that stands: a drained back, sealed edges, fixings that do not rust.';

function untested(frostTested: boolean | null): string[] {
  if (frostTested === true) return [];
  return [
    frostTested === null
      ? 'Whether this body was tested in frost (ASTM C1026) is not known: ask the maker of the clay.'
      : 'This body was not tested in frost (ASTM C1026): have it tested, or keep the piece from frost.',
  ];
}
