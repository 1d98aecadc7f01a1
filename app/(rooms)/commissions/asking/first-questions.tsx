import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { exposures, exposureWords } from '@/lib/commissions/rules/words';
import { lengthText, type AskingProps } from './known';
import css from '../commissions.module.css';

const places = [
  { value: '', label: 'not known yet' },
  ...exposures.map((value) => ({ value, label: exposureWords[value] })),
];

/** What can be asked while they stand there: enough to write it down. */
export function FirstQuestions({ known, lengthUnit }: AskingProps) {
  return (
    <fieldset className={css['questions']}>
      <legend>What they wish</legend>
      <Field
        name="title"
        label="A title to find it by"
        defaultValue={known?.title}
        placeholder="Herons for the stair"
        required
      />
      <Field
        name="wish"
        label="In their own words"
        kind="textarea"
        rows={3}
        defaultValue={known?.wish}
      />
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
      <div className={css['pair']}>
        <Field
          name="heightUm"
          label="Height"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={lengthText(known?.heightUm, lengthUnit)}
        />
        <Field
          name="widthUm"
          label="Width"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={lengthText(known?.widthUm, lengthUnit)}
        />
      </div>
    </fieldset>
  );
}
