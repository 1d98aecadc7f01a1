import { Field } from '@/app/ui/form/field';
import { planStepsMost } from '@/lib/commissions/input/proposal/terms';
import { planEvents } from '@/lib/commissions/rules/facts';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { plainCents } from '@/lib/money/rules';
import css from '../proposal.module.css';

type Step = Readonly<{
  name: string;
  event: string;
  percent: string | null;
  amountCents: bigint | null;
}>;

const numbers = Array.from({ length: planStepsMost }, (_none, at) => at + 1);
const events = [
  { value: '', label: 'no step' },
  ...planEvents.map((value) => ({ value, label: eventWords[value] })),
];

/** The plan of payments: up to five steps, each a share or an amount, tied to an event. */
export function PlanFields({ plan }: Readonly<{ plan: readonly Step[] }>) {
  return (
    <fieldset className={css['plan']}>
      <legend>The plan of payments</legend>
      {numbers.map((number) => {
        const step = plan[number - 1];
        return (
          <div key={number} className={css['step']}>
            <Field
              name={`stepName${number}`}
              label={`Step ${number}`}
              defaultValue={step?.name ?? ''}
            />
            <Field
              name={`stepMuch${number}`}
              label="How much"
              hint={number === 1 ? '50 % or $250.00; the last may be empty.' : undefined}
              defaultValue={step ? muchOf(step) : ''}
            />
            <Field
              name={`stepEvent${number}`}
              label="Due"
              kind="select"
              options={events}
              defaultValue={step?.event ?? ''}
            />
          </div>
        );
      })}
    </fieldset>
  );
}

function muchOf({ percent, amountCents }: Step): string {
  if (percent !== null) return `${percent} %`;
  return amountCents === null || amountCents === 0n ? '' : `$${plainCents(amountCents)}`;
}
