import { ChosenFields } from '@/app/(rooms)/holds/choose-collector';
import type { Choosing } from '@/app/(rooms)/holds/choosing';
import css from '@/app/(rooms)/holds/holds.module.css';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';

/** Something taken off the pieces together, as it was typed, and why. */
export type Off = Readonly<{ cents: bigint; text: string; reason: string }>;

/** Takes something off before the total is reckoned. */
export function TakeOff({
  base,
  choosing,
  off,
}: Readonly<{ base: string; choosing: Choosing; off: Off }>) {
  return (
    <details open={off.cents > 0n}>
      <summary>Take something off</summary>
      <form action={base} className={css['step']}>
        <ChosenFields choosing={choosing} />
        <div className={css['pair']}>
          <Field name="off" label="How much" kind="money" defaultValue={off.text} />
          <Field name="why" label="Why" defaultValue={off.reason} maxLength={200} />
        </div>
        <Button type="submit" variant="quiet">
          Reckon it
        </Button>
      </form>
    </details>
  );
}
