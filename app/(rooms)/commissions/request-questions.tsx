import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { exposures, exposureWords, wallKinds, wallWords } from '@/lib/commissions/rules/words';
import { plainCents } from '@/lib/money/rules';
import { formatLength } from '@/lib/units/rules';
import type { RequestTold } from '@/lib/commissions/reads/sheet';
import css from './commissions.module.css';

type RequestQuestionsProps = Readonly<{
  known: (RequestTold & { title: string }) | null;
  lengthUnit: 'in' | 'mm';
}>;

const places = exposures.map((value) => ({ value, label: exposureWords[value] }));
const walls = [
  { value: '', label: 'not known yet' },
  ...wallKinds.map((value) => ({ value, label: wallWords[value] })),
];

/** What is asked when a commission is opened; all but the title may stay open. */
export function RequestQuestions({ known, lengthUnit }: RequestQuestionsProps) {
  return (
    <>
      <input type="hidden" name="lengthUnit" value={lengthUnit} />
      <fieldset className={css['questions']}>
        <legend>What they wish</legend>
        <Field
          name="title"
          label="A title to find it by"
          defaultValue={known?.title}
          placeholder="Herons for the stair"
          required
        />
        <Field name="wish" label="In their own words" kind="textarea" defaultValue={known?.wish} />
        <Field
          name="avoid"
          label="What they do not want"
          kind="textarea"
          rows={2}
          defaultValue={known?.avoid}
        />
        <Field
          name="colours"
          label="Colours it should go with"
          kind="textarea"
          rows={2}
          defaultValue={known?.colours}
        />
      </fieldset>
      <WhereItHangs known={known} lengthUnit={lengthUnit} />
      <fieldset className={css['questions']}>
        <legend>When, and for how much</legend>
        <Field
          name="wishedOn"
          label="Wished for by"
          kind="day"
          width="short"
          defaultValue={known?.wishedOn ?? ''}
        />
        <div className={css['pair']}>
          <Field
            name="budgetFromCents"
            label="They think of, from"
            kind="money"
            width="short"
            defaultValue={cents(known?.budgetFromCents)}
          />
          <Field
            name="budgetToCents"
            label="up to"
            kind="money"
            width="short"
            defaultValue={cents(known?.budgetToCents)}
          />
        </div>
      </fieldset>
    </>
  );
}

function WhereItHangs({ known, lengthUnit }: RequestQuestionsProps) {
  const length = (um: number | null | undefined) =>
    um ? formatLength(um, lengthUnit).replace(/ (in|mm)$/, '') : '';
  return (
    <fieldset className={css['questions']}>
      <legend>Where it will hang</legend>
      <Field
        name="room"
        label="Which room, which wall"
        defaultValue={known?.room ?? ''}
        placeholder="Stair hall, the long wall"
      />
      <Choice
        name="exposure"
        legend="It will live"
        options={places}
        defaultValue={known?.exposure ?? ''}
      />
      <Field
        name="wall"
        label="The wall is made of"
        kind="select"
        options={walls}
        defaultValue={known?.wall ?? ''}
        width="half"
      />
      <div className={css['pair']}>
        <Field
          name="heightUm"
          label="Height"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={length(known?.heightUm)}
        />
        <Field
          name="widthUm"
          label="Width"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={length(known?.widthUm)}
        />
        <Field
          name="depthUm"
          label="Deepest it may be"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={length(known?.depthUm)}
        />
      </div>
      <Field
        name="siteAddress"
        label="Address of the house"
        hint="If it is not the collector’s own."
        defaultValue={known?.siteAddress ?? ''}
      />
    </fieldset>
  );
}

function cents(amount: bigint | null | undefined): string {
  return typeof amount === 'bigint' ? plainCents(amount) : '';
}
