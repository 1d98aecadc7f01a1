import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Bench } from '@/lib/studio/reads/route-list';
import { keepStudioBench, takeBenchAway } from './actions';
import css from './ways.module.css';

/** The benches, and how many jobs are worked on at each at once. */
export function Benches({ benches }: Readonly<{ benches: readonly Bench[] }>) {
  const used = benches.filter((bench) => !bench.hasEnded);
  return (
    <Section title="Benches">
      <ul className={css['list']}>
        {used.map((bench) => (
          <li key={bench.id}>
            <details>
              <summary>
                {bench.name}, {bench.atOnce === 1 ? 'one job' : `${bench.atOnce} jobs`} at once
              </summary>
              <BenchForm bench={bench} />
              <FormFrame action={takeBenchAway} label={`Take away: ${bench.name}`}>
                <RequestKey />
                <input type="hidden" name="benchId" value={bench.id} />
                <SubmitButton variant="quiet">Take it away</SubmitButton>
              </FormFrame>
            </details>
          </li>
        ))}
        <li>
          <details>
            <summary>Another bench</summary>
            <BenchForm bench={null} />
          </details>
        </li>
      </ul>
    </Section>
  );
}

function BenchForm({ bench }: Readonly<{ bench: Bench | null }>) {
  return (
    <FormFrame action={keepStudioBench} label={bench ? `Change: ${bench.name}` : 'Another bench'}>
      <RequestKey />
      <input type="hidden" name="benchId" value={bench?.id ?? ''} />
      <Field name="name" label="What it is called" defaultValue={bench?.name} required />
      <Field
        name="atOnce"
        label="Jobs at once"
        kind="count"
        width="short"
        defaultValue={String(bench?.atOnce ?? 1)}
      />
      <SubmitButton variant="quiet">Keep it</SubmitButton>
    </FormFrame>
  );
}
