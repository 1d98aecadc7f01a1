import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import type { LengthSystem } from '@/lib/units/rules';
import { cleatsMade, cleatWords } from '@/lib/walls/rules/plan/asked';
import { inchesText, measureText, weightText, weightUnit } from '../texts';
import type { PlanBegun } from './begin-with';
import css from '../../../commissions.module.css';

/** What every group of a plan's questions is given. */
export type PlanFieldsProps = Readonly<{ begun: PlanBegun; unit: LengthSystem }>;

/** The piece as it will hang, and how high. */
export function PieceFields({
  begun,
  unit,
  weightHint,
}: PlanFieldsProps & Readonly<{ weightHint: string }>) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  const { piece, hanging } = begun;
  const { height } = hanging;
  return (
    <fieldset className={css['questions']}>
      <legend>The piece, and where</legend>
      <div className={css['pair']}>
        <Field
          {...measure}
          name="heightUm"
          label="High"
          defaultValue={measureText(piece.heightUm, unit)}
        />
        <Field
          {...measure}
          name="widthUm"
          label="Wide"
          defaultValue={measureText(piece.widthUm, unit)}
        />
        <Field
          {...measure}
          name="depthUm"
          label="Deep, with its board"
          defaultValue={measureText(piece.depthUm, unit)}
        />
        <Field
          name="weightG"
          label="Weight, with its board"
          kind="measure"
          width="short"
          unit={weightUnit(unit)}
          hint={weightHint}
          defaultValue={weightText(piece.weightG, unit)}
        />
      </div>
      <Field
        {...measure}
        name="middleUm"
        label="Its middle, from the left end of the wall"
        defaultValue={measureText(hanging.middleUm, unit)}
      />
      <Choice
        name="heightBy"
        legend="It hangs"
        options={[
          { value: 'eye', label: 'with its middle at a height' },
          { value: 'furniture', label: 'above furniture' },
        ]}
        defaultValue={height.by}
      />
      <div className={css['pair']}>
        <Field
          {...measure}
          name="eyeUm"
          label="Middle above the floor"
          defaultValue={height.by === 'eye' ? measureText(height.eyeUm, unit) : ''}
        />
        <Field
          {...measure}
          name="topUm"
          label="Or furniture, up to"
          defaultValue={height.by === 'furniture' ? measureText(height.topUm, unit) : ''}
        />
        <Field
          {...measure}
          name="gapUm"
          label="and a gap of"
          hint={`${inchesText(6, unit)} to ${inchesText(10, unit)} above a sofa.`}
          defaultValue={height.by === 'furniture' ? measureText(height.gapUm, unit) : ''}
        />
      </div>
    </fieldset>
  );
}

/** The half of the cleat that stays on the wall. */
export function CleatFields({ begun, unit }: PlanFieldsProps) {
  const measure = { kind: 'measure', width: 'short', unit } as const;
  const { cleat } = begun.hanging;
  return (
    <fieldset className={css['questions']}>
      <legend>The cleat on the wall</legend>
      <Choice
        name="made"
        legend="It is of"
        options={cleatsMade.map((value) => ({ value, label: cleatWords[value] }))}
        defaultValue={cleat.made}
      />
      <div className={css['pair']}>
        <Field
          {...measure}
          name="thicknessUm"
          label="Thick"
          defaultValue={measureText(cleat.thicknessUm, unit)}
        />
        <Field
          {...measure}
          name="cleatHeightUm"
          label="High"
          defaultValue={measureText(cleat.heightUm, unit)}
        />
        <Field
          {...measure}
          name="lengthUm"
          label="Long"
          hint={`Open: ${inchesText(2, unit)} shorter than the piece is wide.`}
          defaultValue={measureText(cleat.lengthUm, unit)}
        />
        <Field
          {...measure}
          name="fromTopUm"
          label="Its middle below the top of the piece"
          defaultValue={measureText(cleat.fromTopUm, unit)}
        />
        <Field
          name="bevelDeg"
          label="Bevel"
          hint="45 for the usual cleat, 0 for a level rail or hooks."
          unit="degrees"
          width="short"
          defaultValue={String(cleat.bevelDeg)}
        />
        <Field
          name="railRatedG"
          label="A rail: what its maker rates all of it for"
          kind="measure"
          width="short"
          unit={weightUnit(unit)}
          defaultValue={weightText(cleat.railRatedG, unit)}
        />
      </div>
    </fieldset>
  );
}
