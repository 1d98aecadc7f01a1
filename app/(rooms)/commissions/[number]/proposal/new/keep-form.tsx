import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { TaxPlaceTold } from '@/lib/commissions/reads/tax-places';
import { taxWays, taxWayWords } from '@/lib/commissions/rules/agreement/tax';
import type { CommissionTerms } from '@/lib/commissions/rules/proposal/terms';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { addDays } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import type { KeptDay } from '@/lib/studio/reads/forecast/asked';
import { AboutCommission } from '../../act-page';
import { keep } from '../actions';
import { PlanFields } from './plan-fields';

type KeepFormProps = Readonly<{
  sheet: Sheet;
  said: Readonly<Record<string, string>>;
  last: ProposalShown | null;
  terms: CommissionTerms;
  places: readonly TaxPlaceTold[];
  /** The day that was looked up and kept for it; null where none was. */
  kept: KeptDay | null;
}>;

/** The words, days, tax and plan of a proposal; the figures go along unseen. */
export function KeepForm({ sheet, said, last, terms, places, kept }: KeepFormProps) {
  const from = beginning(sheet, last, terms);
  return (
    <FormFrame action={keep} label="The proposal">
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <Figures said={said} />
      <Field
        name="understanding"
        label="What is wished for, in their own words"
        kind="textarea"
        defaultValue={from.understanding}
      />
      <Choice
        name="taxAs"
        legend="For the tax it is"
        hint="A tax adviser decides."
        layout="down"
        options={taxWays.map((value) => ({ value, label: taxWayWords[value] }))}
        defaultValue={from.taxAs}
      />
      <Field
        name="taxPlaceId"
        label="Sales tax of"
        hint="Of the place where the piece is handed over."
        kind="select"
        defaultValue={from.taxPlaceId}
        options={places.map(({ id, name, rate }) => ({ value: id, label: `${name}, ${rate}` }))}
      />
      <PlanFields plan={last?.steps ?? terms.plan} />
      <DayFields {...{ sheet, last, terms, kept }} />
      <Field
        name="roundsIncluded"
        label="Rounds of changes included"
        kind="count"
        width="short"
        defaultValue={String(from.roundsIncluded)}
      />
      <Field
        name="extraRoundCents"
        label="Each further round"
        kind="money"
        width="short"
        defaultValue={plainCents(from.extraRoundCents)}
      />
      <Field
        name="notIncluded"
        label="Not included"
        kind="textarea"
        rows={2}
        defaultValue={from.notIncluded}
      />
      <Field
        name="terms"
        label="Terms, in your words"
        kind="textarea"
        rows={8}
        defaultValue={from.terms}
      />
      <SubmitButton>Keep this proposal</SubmitButton>
    </FormFrame>
  );
}

/** The last version's words, else the gallery's own. */
function beginning(sheet: Sheet, last: ProposalShown | null, terms: CommissionTerms) {
  if (last) return last;
  const usual = { taxAs: 'goods_hung', taxPlaceId: sheet.gallery.taxPlaceId } as const;
  return { ...terms, ...usual, understanding: sheet.request.wish };
}

function Figures({ said }: Readonly<{ said: Readonly<Record<string, string>> }>) {
  const { apart = '', ...figures } = said;
  return (
    <>
      {Object.entries(figures).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {apart
        .split(',')
        .filter(Boolean)
        .map((kind) => (
          <input key={kind} type="hidden" name="apart" value={kind} />
        ))}
    </>
  );
}

function DayFields({ sheet, last, terms, kept }: Omit<KeepFormProps, 'said' | 'places'>) {
  const { today } = sheet.telling;
  const from = (kept?.in80On ? kept.in50On : last?.readyFromOn) ?? '';
  return (
    <>
      <LookedUp sheet={sheet} kept={kept} />
      <Field
        name="validUntilOn"
        label="It holds until"
        kind="day"
        width="short"
        defaultValue={addDays(today, terms.validDays)}
      />
      <Field
        name="readyFromOn"
        label="Ready from"
        kind="day"
        width="short"
        optional
        defaultValue={from}
      />
      <Field
        name="readyToOn"
        label="Ready by"
        hint="Leave it empty when no day is promised."
        kind="day"
        width="short"
        optional
        defaultValue={kept?.in80On ?? last?.readyToOn ?? sheet.request.wishedOn ?? ''}
      />
    </>
  );
}

function LookedUp({ sheet, kept }: Pick<KeepFormProps, 'sheet' | 'kept'>) {
  const { today } = sheet.telling;
  const lookUp = (
    <Link href={`/studio/days/new?commission=${sheet.number}`}>
      {kept ? 'Look it up again' : 'Look up when it can be ready'}
    </Link>
  );
  if (!kept?.in80On) return <p>{lookUp}</p>;
  return (
    <p>
      Ready by {dayWord(kept.in80On, today)} in 80 of 100, looked up{' '}
      {kept.toldOn === today ? 'today' : `on ${dayWord(kept.toldOn, today)}`}. {lookUp}
    </p>
  );
}
