import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { bandText, type Band } from '@/lib/commissions/rules/enquiry/bands';
import { formatCents } from '@/lib/money/rules';
import { Folded } from './folded';
import { centsText, type AskingProps } from './known';
import { YesNo } from './yes-no';
import css from '../commissions.module.css';

/** By when they wish for it, and why that day. */
export function WhenQuestions({ known }: AskingProps) {
  return (
    <Folded
      title="By when"
      about="the day, why that day, a true deadline or a hope"
      names={['wishedOn', 'wishedWhy', 'isDeadline']}
      open={known !== null}
    >
      <Field
        name="wishedOn"
        label="Wished for by"
        kind="day"
        width="short"
        defaultValue={known?.wishedOn ?? ''}
      />
      <Field
        name="wishedWhy"
        label="Why that day"
        hint="A wedding, moving in, an opening."
        defaultValue={known?.wishedWhy ?? ''}
      />
      <YesNo name="isDeadline" legend="Is that a true deadline" answer={known?.isDeadline} />
    </Folded>
  );
}

/** What they think of spending: a band that is offered, or their own figures. */
export function MoneyQuestions({ known, bands, bandsFor }: AskingProps) {
  const chosen = bands.find((band) => isTheirs(band, known));
  return (
    <Folded
      title="For how much"
      about="three bands to choose from, or figures of their own"
      names={['budgetBand', 'budgetFromCents', 'budgetToCents']}
      open={known !== null}
    >
      {bands.length === 0 ? null : (
        <Choice
          name="budgetBand"
          legend="Pieces like this have been"
          hint={`${bandsFor} Before tax, and no promise.`}
          options={[
            ...bands.map((band) => ({ value: bandText(band), label: bandWords(band) })),
            { value: '', label: 'as written below, or not known yet' },
          ]}
          defaultValue={chosen ? bandText(chosen) : ''}
        />
      )}
      <div className={css['pair']}>
        <Field
          name="budgetFromCents"
          label="They think of, from"
          kind="money"
          width="short"
          defaultValue={chosen ? '' : centsText(known?.budgetFromCents)}
        />
        <Field
          name="budgetToCents"
          label="up to"
          kind="money"
          width="short"
          defaultValue={chosen ? '' : centsText(known?.budgetToCents)}
        />
      </div>
    </Folded>
  );
}

function isTheirs({ fromCents, toCents }: Band, known: AskingProps['known']): boolean {
  return known?.budgetFromCents === fromCents && known.budgetToCents === toCents;
}

function bandWords({ fromCents, toCents }: Band): string {
  return `${whole(fromCents)} to ${whole(toCents)}`;
}

/** Bands are said in whole amounts. */
function whole(cents: bigint): string {
  return formatCents(cents).replace(/\.00$/, '');
}
