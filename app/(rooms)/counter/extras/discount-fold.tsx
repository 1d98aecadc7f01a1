import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import type { SlipShown } from '@/lib/counter/reads';
import { discountWords } from '@/lib/counter/rules/discounts';
import { slipMost } from '@/lib/counter/rules/slip';
import { ChangeForm } from '../change-form';
import css from '../counter.module.css';
import { Fold } from '../fold';

const ways = [
  { value: 'percent', label: 'In 100' },
  { value: 'amount', label: 'In dollars' },
];

/** Something off a line or off the slip: how much and why; what is off can be taken back. */
export function DiscountFold({ shown }: Readonly<{ shown: SlipShown }>) {
  const { slip, facts } = shown;
  const lines = linesToDiscount(shown);
  const given = [
    { on: 'slip', title: 'the slip', discount: slip.content.discount },
    ...lines.map(({ id, title, discount }) => ({ on: id, title, discount })),
  ].flatMap(({ discount, ...each }) =>
    discount ? [{ ...each, words: discountWords(discount) }] : [],
  );
  const owner = facts.mayGoBeyond.has(facts.askerId);
  return (
    <Fold name="Something off" now={given.length > 0 ? 'given' : undefined}>
      {given.map((each) => (
        <ChangeForm key={each.on} slip={slip} does="no_discount" label={`Off ${each.title}`}>
          <p className={css['for-whom']}>
            <span>
              {each.title}: {each.words}
            </span>
            <SubmitButton name="on" value={each.on} variant="quiet" size="counter">
              Take it back
            </SubmitButton>
          </p>
        </ChangeForm>
      ))}
      <ChangeForm slip={slip} does="discount" label="Something off">
        <Field
          {...{ name: 'on', label: 'Off what', kind: 'select', size: 'counter' }}
          options={[
            { value: 'slip', label: 'the whole slip' },
            ...lines.map(({ id, title }) => ({ value: id, label: title })),
          ]}
        />
        <div className={css['side-by-side']}>
          <Field name="much" label="How much" kind="count" size="counter" />
          <Choice
            {...{ name: 'as', legend: 'Counted', options: ways }}
            {...{ defaultValue: 'percent', size: 'counter' }}
          />
        </div>
        <Field
          {...{ name: 'reason', label: 'Why', size: 'counter', maxLength: slipMost.words }}
          hint={
            owner
              ? 'It stands on the receipt and in the month.'
              : `You may take off ${facts.staffPercent} in 100 by yourself; the owner may more.`
          }
        />
        <SubmitButton size="counter" variant="quiet">
          Take it off
        </SubmitButton>
      </ChangeForm>
    </Fold>
  );
}

function linesToDiscount(shown: SlipShown) {
  const { reckoned, facts } = shown;
  return reckoned.lines.flatMap(({ line, at }) => {
    if (!['piece', 'set', 'typed'].includes(line.kind)) return [];
    const set = line.kind === 'set' ? facts.sets.find((s) => s.setId === line.setId) : null;
    const title = set?.title ?? reckoned.priced.lines[at[0] ?? -1]?.title ?? 'a line';
    return [{ id: line.id, title, discount: line.discount }];
  });
}
