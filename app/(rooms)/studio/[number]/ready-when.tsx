import { Working } from '@/app/ui/page/working';
import { type Day } from '@/lib/dates/rules';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { readyWords, shortDay, stepDaysWords } from '@/lib/studio/rules/words';

type ReadyWhenProps = Readonly<{ job: JobStanding; todayOn: Day }>;

/** What is left of its route in days, without any waiting, with how that was worked out. */
export function ReadyWhen({ job, todayOn }: ReadyWhenProps) {
  if (!job.ready) return <p>Everything is finished.</p>;
  return (
    <>
      <p>With no waiting at all it would be {readyWords(job.ready, todayOn)}.</p>
      <Working
        steps={stepsOf(job, todayOn)}
        formula="what is left of the step where the last pieces stand, and the days of every step after it, added to today"
        source="the days of the route that the job began with"
        caution="Benches, kilns and losses are left out here; the day above reckons with them."
      />
    </>
  );
}

function stepsOf(job: JobStanding, todayOn: Day): string[] {
  const behind = job.standings[0];
  const from = behind?.position ?? 0;
  const left = job.steps.filter((_step, index) => index + 1 >= from);
  const lines = left.map((step, index) => {
    const spent = index === 0 && from > 0 ? (behind?.days ?? 0) : 0;
    const already = spent > 0 ? `, of which ${spent} are spent` : '';
    return `${step.name}: ${stepDaysWords(step)}${already}`;
  });
  const last = job.ready
    ? `from today, ${shortDay(todayOn, todayOn)}: ${shortDay(job.ready.likelyOn, todayOn)}`
    : '';
  return [...lines, last];
}
