import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import type { Day } from '@/lib/dates/rules';
import type { ToldJob } from '@/lib/studio/reads/forecast/tell';
import { lateInHundred } from '@/lib/studio/rules/forecast/telling/words';

/** The same days as a table, one touch away. */
export function JobsTable({ jobs }: Readonly<{ jobs: readonly ToldJob[] }>) {
  return (
    <details>
      <summary>The same as a table</summary>
      <Table
        caption="Open jobs and the day by which each is ready"
        captionHeardOnly
        columns={[
          { name: 'Job' },
          { name: 'In 50 of 100', wideOnly: true },
          { name: 'In 80 of 100' },
          { name: 'In 95 of 100', wideOnly: true },
          { name: 'Needed by' },
          { name: 'Late in 100', figure: true },
        ]}
        rows={jobs.map(({ of, told }) => ({
          key: of.job.id,
          cells: [
            `${of.number}, ${of.title}`,
            <OneDay key="50" day={told.readyOn.in50} />,
            <OneDay key="80" day={told.readyOn.in80} />,
            <OneDay key="95" day={told.readyOn.in95} />,
            of.neededOn ? <DayText key="needed" day={of.neededOn} /> : 'no day',
            lateInHundred(told) ?? '',
          ],
        }))}
      />
    </details>
  );
}

function OneDay({ day }: Readonly<{ day: Day | null }>) {
  return day ? <DayText day={day} /> : 'beyond two years';
}
