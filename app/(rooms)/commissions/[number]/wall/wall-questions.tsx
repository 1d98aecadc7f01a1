import { Field } from '@/app/ui/form/field';
import { wallKinds, wallWords, type WallKind } from '@/lib/commissions/rules/words';
import type { SurveyTold } from '@/lib/installation/reads/survey/told';
import type { LengthSystem } from '@/lib/units/rules';
import { studWoods, studWoodWords } from '@/lib/walls/rules/fixings/screws';
import { Folded } from '../../asking/folded';
import { YesNo } from '../../asking/yes-no';
import { countOf, inchesText, measureText, wordsOf } from './texts';
import css from '../../commissions.module.css';

/** What every group of questions about a wall is given. */
export type LookingProps = Readonly<{ known: SurveyTold | null; unit: LengthSystem }>;

const notKnown = { value: '', label: 'not known yet' };
const walls = [notKnown, ...wallKinds.map((value) => ({ value, label: wallWords[value] }))];
const woods = [notKnown, ...studWoods.map((value) => ({ value, label: studWoodWords[value] }))];

type MadeProps = LookingProps & Readonly<{ requestSays: WallKind | null }>;

/** What the wall is made of, and what of it holds something. */
export function MadeQuestions({ known, unit, requestSays }: MadeProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <fieldset className={css['questions']}>
      <legend>What it is made of</legend>
      <Field
        name="wall"
        label="The wall is made of"
        kind="select"
        options={walls}
        defaultValue={known?.wall ?? ''}
        hint={`${requestSays && !known ? `The request says: ${wallWords[requestSays]}. ` : ''}Not what it looks like: a plaster wall has been foam behind paint.`}
        width="half"
      />
      <Field
        name="provedHow"
        label="How that was proved"
        hint="Magnet, drill dust, an inspection hole, an outlet that was opened."
        defaultValue={wordsOf(known, 'provedHow')}
        maxLength={300}
      />
      <div className={css['pair']}>
        <Field
          {...measure}
          name="wallWidthUm"
          label="Wide"
          hint="The smallest of three."
          defaultValue={measureText(known?.wallWidthUm, unit)}
        />
        <Field
          {...measure}
          name="ceilingUm"
          label="From floor to ceiling"
          hint="Or to what hangs lowest from it."
          defaultValue={measureText(known?.ceilingUm, unit)}
        />
        <Field
          {...measure}
          name="outOfPlumbUm"
          label="Out of plumb or flat"
          hint="Over the length; 0 for true."
          defaultValue={measureText(known?.outOfPlumbUm, unit)}
        />
      </div>
    </fieldset>
  );
}

const studNames = [
  ...['studSpacingUm', 'firstStudUm', 'studWood', 'studWidthUm', 'studDepthUm', 'steelGauge'],
  ...['coverUm', 'isPlasterSound', 'hasBacking', 'backing'],
];

/** The studs, what is before them, and wood that was built in. */
export function StudQuestions({ known, unit }: LookingProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <Folded
      title="Studs, and what is before them"
      about="how far apart, the first from the left end, board, wood that was built in"
      names={studNames}
      open
    >
      <div className={css['pair']}>
        <Field
          {...measure}
          name="studSpacingUm"
          label="Studs, middle to middle"
          hint={`Mostly ${inchesText(16, unit)} or ${inchesText(24, unit)}.`}
          defaultValue={measureText(known?.studSpacingUm, unit)}
        />
        <Field
          {...measure}
          name="firstStudUm"
          label="First one, from the left end"
          hint="To its middle."
          defaultValue={measureText(known?.firstStudUm, unit)}
        />
        <Field
          {...measure}
          name="coverUm"
          label="Board or plaster before it"
          hint="0 for none."
          defaultValue={measureText(known?.coverUm, unit)}
        />
      </div>
      <StudItself known={known} unit={unit} />
      <YesNo
        name="isPlasterSound"
        legend="Is the plaster sound"
        hint="Tap it: no cracks, nothing hollow."
        answer={known?.isPlasterSound}
      />
      <YesNo
        name="hasBacking"
        legend="Was wood built in to hold the piece"
        answer={known?.hasBacking}
      />
      <Field
        name="backing"
        label="By whom, how thick, from where to where"
        defaultValue={wordsOf(known, 'backing')}
        maxLength={300}
      />
    </Folded>
  );
}

function StudItself({ known, unit }: LookingProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <div className={css['pair']}>
      <Field
        name="studWood"
        label="Studs of wood are of"
        kind="select"
        options={woods}
        defaultValue={known?.studWood ?? ''}
        width="half"
      />
      <Field
        name="steelGauge"
        label="Studs of steel, gauge"
        kind="count"
        hint="A larger number is thinner."
        defaultValue={countOf(known, 'steelGauge')}
        width="short"
      />
      <Field
        {...measure}
        name="studWidthUm"
        label="Width of a stud"
        defaultValue={measureText(known?.studWidthUm, unit)}
      />
      <Field
        {...measure}
        name="studDepthUm"
        label="Depth of a stud"
        defaultValue={measureText(known?.studDepthUm, unit)}
      />
    </div>
  );
}
