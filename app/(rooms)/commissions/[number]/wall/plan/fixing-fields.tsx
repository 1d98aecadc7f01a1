import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { screwNames, screws } from '@/lib/walls/rules/fixings/screws';
import { anchorKinds, anchorWords, safetyFactors } from '@/lib/walls/rules/plan/asked';
import { inchesText, measureText, weightText, weightUnit } from '../texts';
import type { PlanFieldsProps } from './plan-fields';
import css from '../../../commissions.module.css';

/** What the cleat is fixed with: screws into wood, or anchors by what their maker rates them for. */
export function FixingFields({ begun, unit }: PlanFieldsProps) {
  const { fixing, safetyFactor } = begun.hanging;
  return (
    <fieldset className={css['questions']}>
      <legend>What holds it</legend>
      <Choice
        name="by"
        legend="It is fixed with"
        options={[
          { value: 'screw', label: 'screws into wood' },
          { value: 'anchor', label: 'rated anchors or toggles' },
        ]}
        defaultValue={fixing.by}
      />
      <ScrewFields begun={begun} unit={unit} />
      <AnchorFields begun={begun} unit={unit} />
      <div className={css['pair']}>
        <Field
          name="perUpright"
          label="How many in each stud, or along the cleat"
          hint="Open: as many as it takes."
          kind="count"
          width="short"
          defaultValue={fixing.perUpright?.toString() ?? ''}
        />
        <Choice
          name="isStainless"
          kind="tick"
          legend="Steel"
          options={[{ value: 'yes', label: 'stainless' }]}
          defaultValue={fixing.isStainless ? 'yes' : ''}
        />
      </div>
      <Choice
        name="safetyFactor"
        legend="They bear it"
        hint="Common practice: two to three times; four over people and in public places."
        options={safetyFactors.map((times) => ({
          value: String(times),
          label: `${times} times over`,
        }))}
        defaultValue={String(safetyFactor)}
      />
    </fieldset>
  );
}

function ScrewFields({ begun, unit }: PlanFieldsProps) {
  const { fixing, backingUm } = begun.hanging;
  const isScrew = fixing.by === 'screw';
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <div className={css['pair']}>
      <Field
        name="screw"
        label="Screw"
        kind="select"
        options={screwNames.map((value) => ({ value, label: screws[value].words }))}
        defaultValue={isScrew ? fixing.screw : 'no_12'}
      />
      <Field
        {...measure}
        name="screwLengthUm"
        label="Long"
        hint={`${inchesText(1.5, unit)} or more has to sit in the wood.`}
        defaultValue={isScrew ? measureText(fixing.lengthUm, unit) : ''}
      />
      <Field
        {...measure}
        name="backingUm"
        label="Into wood that was built in, thick"
        hint="Open: into the studs."
        defaultValue={measureText(backingUm, unit)}
      />
    </div>
  );
}

function AnchorFields({ begun, unit }: PlanFieldsProps) {
  const { fixing } = begun.hanging;
  const anchor = fixing.by === 'anchor' ? fixing : null;
  const rated = { kind: 'measure', width: 'short', unit: weightUnit(unit) } as const;
  const measure = { kind: 'measure', width: 'short', unit } as const;
  return (
    <div className={css['pair']}>
      <Field
        name="anchor"
        label="Anchor"
        kind="select"
        options={anchorKinds.map((value) => ({ value, label: anchorWords[value] }))}
        defaultValue={anchor?.anchor ?? 'sleeve'}
      />
      <Field
        {...rated}
        name="ratedPullG"
        label="Rated, pulled out"
        hint="By its maker, for this wall."
        defaultValue={weightText(anchor?.ratedPullG, unit)}
      />
      <Field
        {...rated}
        name="ratedPushG"
        label="Rated, sideways"
        defaultValue={weightText(anchor?.ratedPushG, unit)}
      />
      <Field
        {...measure}
        name="embedUm"
        label="How deep"
        defaultValue={measureText(anchor?.embedUm || null, unit)}
      />
      <Field
        {...measure}
        name="leastApartUm"
        label="No nearer than"
        defaultValue={measureText(anchor?.leastApartUm || null, unit)}
      />
    </div>
  );
}
