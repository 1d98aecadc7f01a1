import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { sunKinds, sunWords } from '@/lib/commissions/rules/enquiry/words';
import { wallKinds, wallWords } from '@/lib/commissions/rules/words';
import { Folded } from './folded';
import { lengthText, type AskingProps } from './known';
import { YesNo } from './yes-no';
import css from '../commissions.module.css';

const walls = [
  { value: '', label: 'not known yet' },
  ...wallKinds.map((value) => ({ value, label: wallWords[value] })),
];
const suns = [
  { value: '', label: 'not known yet' },
  ...sunKinds.map((value) => ({ value, label: sunWords[value] })),
];
const names = [...['wall', 'depthUm', 'hangHeightUm', 'siteAddress', 'freezes', 'sun', 'access']];

/** The wall, the weather it gets, and how one gets in. */
export function WhereQuestions({ known, lengthUnit }: AskingProps) {
  return (
    <Folded
      title="The wall and the way in"
      about="wall, depth, frost, sun, stairs and doors"
      names={names}
      open={known !== null}
    >
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
          name="depthUm"
          label="Deepest it may be"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={lengthText(known?.depthUm, lengthUnit)}
        />
        <Field
          name="hangHeightUm"
          label="Its middle above the floor"
          kind="measure"
          width="short"
          unit={lengthUnit}
          defaultValue={lengthText(known?.hangHeightUm, lengthUnit)}
        />
      </div>
      <Field
        name="siteAddress"
        label="Address of the house"
        hint="If it is not the collector’s own."
        defaultValue={known?.siteAddress ?? ''}
      />
      <YesNo name="freezes" legend="Does it freeze there" answer={known?.freezes} />
      <Choice
        name="sun"
        legend="How much sun it gets"
        options={suns}
        defaultValue={known?.sun ?? ''}
      />
      <Field
        name="access"
        label="How one gets in"
        hint="Who opens; gate, stairs, smallest door, lift, hours of the house, a dog."
        kind="textarea"
        rows={3}
        maxLength={600}
        defaultValue={known?.access ?? ''}
      />
    </Folded>
  );
}
