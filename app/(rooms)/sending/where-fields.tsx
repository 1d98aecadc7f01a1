import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { plainCents, type Cents } from '@/lib/money/rules';
import type { CarrierTerms } from '@/lib/sending/rules/carriers';
import { sentHows, type SentHow } from '@/lib/sending/rules/words';
import css from './sending.module.css';

type WhereFieldsProps = Readonly<{
  terms: readonly CarrierTerms[];
  known: Readonly<{
    how: SentHow;
    termsId: string | null;
    carrier: string;
    toName: string;
    toAddress: string;
    toPhone: string;
    insuredCents: Cents;
    insuredBy: string;
    note: string;
  }>;
}>;

/** How something gets there, to whom, and who insures it. */
export function WhereFields({ terms, known }: WhereFieldsProps) {
  return (
    <>
      <Choice
        name="how"
        legend="How it gets there"
        options={sentHows.map(({ how, words, hint }) => ({ value: how, label: words, hint }))}
        defaultValue={known.how}
      />
      <div className={css['pair']}>
        <Field
          name="carrierRuleId"
          label="How the carrier reckons"
          kind="select"
          hint="For a carrier alone. The owner keeps these in the settings."
          options={[
            { value: '', label: 'not chosen yet' },
            ...terms.map((each) => ({
              value: each.id,
              label: each.name,
            })),
          ]}
          defaultValue={known.termsId ?? ''}
        />
        <Field
          name="carrier"
          label="Which carrier"
          hint="As it is to stand on the papers."
          defaultValue={known.carrier}
          maxLength={80}
          optional
        />
      </div>
      <ToFields known={known} />
      <div className={css['pair']}>
        <Field
          name="insuredCents"
          label="What it is worth"
          kind="money"
          hint="For the insurance; it never stands on a label."
          defaultValue={plainCents(known.insuredCents)}
        />
        <Field
          name="insuredBy"
          label="Who insures it"
          hint="A declared value is no insurance."
          defaultValue={known.insuredBy}
          maxLength={120}
          optional
        />
      </div>
      <Field
        name="note"
        label="To note"
        kind="textarea"
        rows={2}
        hint="A lift-gate, stairs, an appointment, who is at home."
        defaultValue={known.note}
        maxLength={1000}
        optional
      />
    </>
  );
}

/** To whom and where, as on the label. */
function ToFields({ known }: Pick<WhereFieldsProps, 'known'>) {
  return (
    <>
      <Field name="toName" label="To whom" defaultValue={known.toName} maxLength={120} required />
      <Field
        name="toAddress"
        label="Where to"
        kind="textarea"
        rows={3}
        hint="Street, town, state and postcode, as on the label. What is fetched needs none."
        defaultValue={known.toAddress}
        maxLength={400}
      />
      <Field
        name="toPhone"
        label="Telephone there"
        kind="telephone"
        defaultValue={known.toPhone}
        maxLength={40}
        width="half"
        optional
      />
    </>
  );
}
