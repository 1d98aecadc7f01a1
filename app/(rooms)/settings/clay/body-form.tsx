import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { ClayBodyKept } from '@/lib/commissions/reads/enquiry/bodies';
import { formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';
import { keepClay } from './actions';

const answers = [
  { value: '', label: 'not known yet' },
  { value: 'yes', label: 'yes, and it stood' },
  { value: 'no', label: 'no' },
];

/** What is known of a clay body; all but the name may stay open. */
export function BodyForm({ body }: Readonly<{ body: ClayBodyKept | null }>) {
  return (
    <FormFrame action={keepClay} label={body ? body.name : 'Another clay body'}>
      <RequestKey />
      <input type="hidden" name="bodyId" value={body?.id ?? ''} />
      <Field
        name="name"
        label="Name"
        hint="As it stands on the bag, with the cone it is fired to."
        defaultValue={body?.name}
        maxLength={80}
        required
      />
      <Measures body={body} />
      <Choice
        name="frostTested"
        legend="Tested in frost by a laboratory (ASTM C1026)"
        options={answers}
        defaultValue={frostAnswer(body)}
      />
      <Field
        name="centsPerKg"
        label="A kilogram costs, delivered"
        hint="A box of 50 lb has 22.68 kg. What a piece costs is reckoned with it."
        kind="money"
        defaultValue={dollarsOf(body?.centsPerKg ?? null)}
        width="short"
        optional
      />
      <Field name="note" label="Note" kind="textarea" rows={2} defaultValue={body?.note} optional />
      <SubmitButton>{body ? 'Keep it' : 'Write it down'}</SubmitButton>
    </FormFrame>
  );
}

function Measures({ body }: Readonly<{ body: ClayBodyKept | null }>) {
  return (
    <>
      <Field
        name="absorptionPercent"
        label="Water it takes up, fired"
        hint="From a test of your own firing, or the maker’s sheet."
        kind="percent"
        defaultValue={body?.absorptionPercent ?? ''}
        width="short"
      />
      <Field
        name="shrinkagePercent"
        label="Shrinks, wet to fired"
        kind="percent"
        defaultValue={body?.shrinkagePercent ?? ''}
        width="short"
      />
      <Field
        name="densityGPerCm3"
        label="Weighs, fired"
        kind="measure"
        unit="g/cm³"
        defaultValue={body?.densityGPerCm3 ?? ''}
        width="short"
      />
    </>
  );
}

/** Decimal cents as dollars, the way they were typed. */
function dollarsOf(cents: string | null): string {
  const read = parseDecimal(cents ?? '');
  return read ? formatDecimal({ units: read.units, scale: read.scale + 2 }) : '';
}

function frostAnswer(body: ClayBodyKept | null): string {
  if (body === null || body.frostTested === null) return '';
  return body.frostTested ? 'yes' : 'no';
}
