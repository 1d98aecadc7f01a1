import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { Bench, Route } from '@/lib/studio/reads/route-list';
import { techniques, techniqueWords } from '@/lib/studio/rules/routes';
import { keep } from './actions';
import { StepRows } from './step-rows';

type RouteFormProps = Readonly<{ route: Route | null; benches: readonly Bench[] }>;

/** A route as a form: its name, whether it is the usual one, and its steps. */
export function RouteForm({ route, benches }: RouteFormProps) {
  return (
    <FormFrame action={keep} label={route ? 'Change the route' : 'Write a route'}>
      <RequestKey />
      <input type="hidden" name="routeId" value={route?.id ?? ''} />
      <Field name="name" label="What it is called" defaultValue={route?.name} required />
      <Choice
        name="technique"
        legend="How it is made"
        options={techniques.map((value) => ({ value, label: techniqueWords[value] }))}
        defaultValue={route?.technique}
      />
      <Choice
        name="isUsual"
        legend="When nobody chooses"
        kind="tick"
        options={[{ value: 'on', label: 'It is the usual route of its technique' }]}
        defaultValue={route?.isUsual ? 'on' : ''}
      />
      <StepRows
        steps={route?.steps ?? []}
        benches={benches
          .filter((bench) => !bench.hasEnded)
          .map(({ id, name }) => ({ value: id, label: name }))}
      />
      <SubmitButton>Keep the route</SubmitButton>
    </FormFrame>
  );
}
