import { Field } from '@/app/ui/form/field';
import { formatDay } from '@/lib/dates/rules';
import type { FiringNamed } from '@/lib/glazes/reads/tiles';

/** Which opened firing a tile was in; none while it waits, or was fired elsewhere. */
export function FiringField({
  firings,
  chosen,
}: Readonly<{ firings: readonly FiringNamed[]; chosen: string }>) {
  return (
    <Field
      name="firingId"
      label="Fired in"
      kind="select"
      options={[
        { value: '', label: 'not fired yet, or not in the log' },
        ...firings.map(({ id, number, cone, kiln, openedOn }) => ({
          value: id,
          label: `firing ${number}, cone ${cone}, ${kiln}, opened ${formatDay(openedOn, 'short')}`,
        })),
      ]}
      defaultValue={chosen}
    />
  );
}
