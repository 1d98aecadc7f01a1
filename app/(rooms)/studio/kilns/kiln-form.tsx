import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { plainCents } from '@/lib/money/rules';
import { fahrenheitOf, type Scale } from '@/lib/studio/rules/kilns/degrees';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import { formatLength } from '@/lib/units/rules';
import { sendKiln } from './actions';
import css from './kilns.module.css';

type KilnFormProps = Readonly<{
  kiln: (KilnFacts & { id: string }) | null;
  lengthUnit: 'in' | 'mm';
  degrees: Scale;
}>;

/** A kiln: its room, its power and costs, and how it is used. */
export function KilnForm({ kiln, lengthUnit, degrees }: KilnFormProps) {
  const length = (um: number | undefined) => (um ? formatLength(um, lengthUnit) : undefined);
  return (
    <FormFrame action={sendKiln} label={kiln ? `What is known of ${kiln.name}` : 'Another kiln'}>
      <RequestKey />
      <input type="hidden" name="kilnId" value={kiln?.id ?? ''} />
      <input type="hidden" name="lengthUnit" value={lengthUnit} />
      <input type="hidden" name="degrees" value={degrees} />
      <Field name="name" label="What it is called" defaultValue={kiln?.name} required />
      <div className={css['pair']}>
        <Field
          name="insideHeight"
          label="Room inside, height"
          kind="measure"
          hint="From the floor to the lid, empty."
          defaultValue={length(kiln?.insideHeightUm)}
          required
        />
        <Field
          name="shelfWidth"
          label="One shelf, width"
          kind="measure"
          defaultValue={length(kiln?.shelfWidthUm)}
          required
        />
        <Field
          name="shelfDepth"
          label="One shelf, depth"
          kind="measure"
          defaultValue={length(kiln?.shelfDepthUm)}
          required
        />
        <Field
          name="shelfThick"
          label="One shelf, thickness"
          kind="measure"
          defaultValue={length(kiln?.shelfThickUm)}
          required
        />
        <Field
          name="shelves"
          label="How many shelves"
          kind="count"
          defaultValue={String(kiln?.shelves ?? 6)}
          required
        />
      </div>
      <PowerFields kiln={kiln} />
      <UseFields kiln={kiln} degrees={degrees} />
      <SubmitButton size="counter">{kiln ? 'Keep this' : 'Write it down'}</SubmitButton>
    </FormFrame>
  );
}

function PowerFields({ kiln }: Pick<KilnFormProps, 'kiln'>) {
  return (
    <div className={css['pair']}>
      <Field
        name="powerW"
        label="Power"
        kind="count"
        unit="W"
        hint="Volts times amperes, from its plate."
        defaultValue={kiln ? String(kiln.powerW) : undefined}
        required
      />
      <Field
        name="centsPerKwh"
        label="What a kWh costs, in cents"
        kind="count"
        hint="From the bill, such as 15.25."
        defaultValue={kiln?.centsPerKwh}
        required
      />
      <Field
        name="wearCents"
        label="Wear of each firing"
        kind="money"
        hint="Elements and relays, spread over their life."
        defaultValue={kiln ? plainCents(kiln.wearCents) : '5.00'}
        required
      />
      <Field
        name="elementFirings"
        label="Elements last, in firings"
        kind="count"
        hint="About 150 at cone 6, about 300 low ones."
        defaultValue={String(kiln?.elementFirings ?? 150)}
        required
      />
    </div>
  );
}

function UseFields({ kiln, degrees }: Pick<KilnFormProps, 'kiln' | 'degrees'>) {
  const openBelowC = kiln?.openBelowC ?? 93;
  return (
    <>
      <div className={css['pair']}>
        <Field
          name="cones"
          label="Cones it is fired to"
          hint="Such as 04, 05, 6."
          defaultValue={kiln?.cones.join(', ')}
          required
        />
        <Field
          name="turnsAWeek"
          label="Turns a week"
          kind="count"
          hint="Two is common."
          defaultValue={String(kiln?.turnsAWeek ?? 2)}
          required
        />
        <Field
          name="leastFillPercent"
          label="How full before it is lit"
          kind="percent"
          defaultValue={String(kiln?.leastFillPercent ?? 70)}
          required
        />
        <Field
          name="longestWaitDays"
          label="Lit anyway after, in days"
          kind="count"
          defaultValue={String(kiln?.longestWaitDays ?? 14)}
          required
        />
        <Field
          name="openBelow"
          label="Opened below"
          kind="count"
          unit={`°${degrees}`}
          hint="What its maker says goes before any habit."
          defaultValue={String(degrees === 'F' ? fahrenheitOf(openBelowC) : openBelowC)}
          required
        />
      </div>
      <Field name="note" label="Note" kind="textarea" rows={2} defaultValue={kiln?.note} optional />
    </>
  );
}
