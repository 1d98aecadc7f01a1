import { Field } from '@/app/ui/form/field';
import { workKinds, workWords } from '@/lib/commissions/rules/proposal/build-up';
import {
  hoursSaid,
  measureWords,
  rateSaid,
  type RateFor,
} from '@/lib/commissions/rules/proposal/measures';
import type { PriceBasis } from '@/lib/commissions/rules/proposal/terms';
import { plainCents, type Cents } from '@/lib/money/rules';
import type { LengthSystem } from '@/lib/units/rules';
import css from '../settings.module.css';

type RateFieldsProps = Readonly<{ basis: PriceBasis; unit: LengthSystem }>;

/** The rates, hours and percents of the build-up, in the gallery's own measures. */
export function RateFields({ basis, unit }: RateFieldsProps) {
  const [shallow, middle, deep] = basis.areaCentsPerM2;
  const money = (name: string, label: string, cents: Cents, rateFor?: RateFor) => (
    <Field
      name={name}
      label={rateFor ? `${label}, for one ${measureWords[unit][rateFor]}` : label}
      kind="money"
      width="short"
      defaultValue={plainCents(rateFor ? rateSaid(cents, rateFor, unit) : cents)}
    />
  );
  return (
    <>
      <input type="hidden" name="unit" value={unit} />
      {money('hourCents', 'An hour of work', basis.hourCents)}
      {money('firingCents', 'A turn of the kiln', basis.firingCents)}
      {money('clayCents', 'Clay', basis.clayCentsPerKg, 'weight')}
      {money('glazeCents', 'A coat of glaze', basis.glazeCentsPerM2, 'area')}
      {money('boardCents', 'Backing board and adhesive', basis.boardCentsPerM2, 'area')}
      {money('frameCents', 'Frame', basis.frameCentsPerM, 'length')}
      {money('shallowCents', 'By area, shallow relief', shallow, 'area')}
      {money('middleCents', 'By area, middle relief', middle, 'area')}
      {money('deepCents', 'By area, deep relief', deep, 'area')}
      <p className={css['quiet']}>Hours to begin with, for one {measureWords[unit].area}:</p>
      {workKinds.map((kind) => (
        <Field
          key={kind}
          name={kind}
          label={workWords[kind]}
          kind="measure"
          width="short"
          defaultValue={hoursSaid(basis.hoursPerM2[kind], unit)}
        />
      ))}
      <PercentFields basis={basis} />
    </>
  );
}

function PercentFields({ basis }: Pick<RateFieldsProps, 'basis'>) {
  const percents = [
    ['lossPercent', 'Losses, of what the kiln can spoil', basis.lossPercent],
    ['overheadPercent', 'Overhead, of the direct cost', basis.overheadPercent],
    ['contingencyPercent', 'Contingency, of all of that', basis.contingencyPercent],
    ['marginPercent', 'Margin, of the cost', basis.marginPercent],
  ] as const;
  return percents.map(([name, label, value]) => (
    <Field key={name} name={name} label={label} kind="percent" width="short" defaultValue={value} />
  ));
}
