import { DayText } from '@/app/ui/figures/day-text';
import type { Fact } from '@/app/ui/page/facts';
import type { RequestTold } from '@/lib/commissions/reads/enquiry/request';
import { referralWords } from '@/lib/commissions/rules/enquiry/referral';
import { sunWords, yesNoWords } from '@/lib/commissions/rules/enquiry/words';
import { exposureWords, wallWords } from '@/lib/commissions/rules/words';
import { formatCents, type Currency } from '@/lib/money/rules';
import { formatLength, type LengthSystem } from '@/lib/units/rules';
import { sizeWords } from '../size-words';
import css from '../commissions.module.css';

/** A group of what was asked, under its own words. */
export type FactGroup = Readonly<{ title: string; facts: readonly Fact[] }>;

type Told = Readonly<{
  request: RequestTold;
  lengthUnit: LengthSystem;
  currency: Currency;
  seesMoney: boolean;
}>;

/** Everything that was asked for, in groups; what is not known yet stands as that. */
export function requestGroups({ request, lengthUnit, currency, seesMoney }: Told): FactGroup[] {
  return [
    { title: 'Who', facts: whoFacts(request) },
    { title: 'What', facts: whatFacts(request) },
    { title: 'Where', facts: whereFacts(request) },
    { title: 'Size and wall', facts: wallFacts(request, lengthUnit) },
    { title: 'When', facts: whenFacts(request) },
    ...(seesMoney
      ? [{ title: 'Money', facts: [{ name: 'They think of', value: budget(request, currency) }] }]
      : []),
    { title: 'Who brought them', facts: broughtFacts(request) },
  ];
}

function whoFacts({ decides, pays, wallOwner, foundUs }: RequestTold): Fact[] {
  return [
    { name: 'Says yes', value: decides },
    { name: 'Pays', value: pays },
    { name: 'The wall is of', value: wallOwner },
    { name: 'Found the gallery', value: foundUs },
  ];
}

function whatFacts({ wish, avoid, colours, body, forFood }: RequestTold): Fact[] {
  return [
    { name: 'They wish', value: words(wish) },
    { name: 'They do not want', value: words(avoid) },
    { name: 'Colours to go with', value: words(colours) },
    { name: 'Clay body', value: body && body.name },
    { name: 'Food touches it', value: yesNoWords(forFood) },
  ];
}

function whereFacts(request: RequestTold): Fact[] {
  const { room, exposure, siteAddress, freezes, sun, access } = request;
  return [
    { name: 'Room', value: room },
    { name: 'It will live', value: exposure && exposureWords[exposure] },
    { name: 'It freezes there', value: yesNoWords(freezes) },
    { name: 'Sun', value: sun && sunWords[sun] },
    { name: 'House', value: siteAddress },
    { name: 'How one gets in', value: access && words(access) },
  ];
}

function wallFacts(request: RequestTold, lengthUnit: LengthSystem): Fact[] {
  const { wall, hangHeightUm } = request;
  return [
    { name: 'Size', value: sizeWords(request, lengthUnit) },
    { name: 'The wall is', value: wall && wallWords[wall] },
    {
      name: 'Its middle above the floor',
      value: hangHeightUm === null ? null : formatLength(hangHeightUm, lengthUnit),
    },
  ];
}

function whenFacts({ wishedOn, wishedWhy, isDeadline }: RequestTold): Fact[] {
  return [
    { name: 'Wished for by', value: wishedOn && <DayText day={wishedOn} style="long" /> },
    { name: 'Why that day', value: wishedWhy },
    { name: 'A true deadline', value: yesNoWords(isDeadline) },
  ];
}

function broughtFacts({ broughtBy, broughtPercent, broughtKnown }: RequestTold): Fact[] {
  const value = referralWords({
    ...{ broughtById: broughtBy?.id ?? null, name: broughtBy?.name ?? null },
    ...{ percent: broughtPercent, isKnown: broughtKnown },
  });
  return [{ name: 'Brought by', value, notKnown: 'not settled yet' }];
}

function words(said: string) {
  return said === '' ? null : <span className={css['said']}>{said}</span>;
}

function budget(request: RequestTold, currency: Currency): string | null {
  const { budgetFromCents: from, budgetToCents: to } = request;
  const told = (cents: bigint) => formatCents(cents, { currency });
  if (from !== null && to !== null) return `${told(from)} to ${told(to)}`;
  if (from !== null) return `from ${told(from)}`;
  return to === null ? null : `up to ${told(to)}`;
}
