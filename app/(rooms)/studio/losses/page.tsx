import type { Metadata } from 'next';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { requireActor } from '@/lib/access/reads';
import { addDays, dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listLearnedLosses, listLostFor, type LostFor } from '@/lib/studio/reads/losses';
import { lossCauseWords } from '@/lib/studio/rules';
import { piecesWords } from '@/lib/studio/rules/words';
import { LearnedTable } from './learned-table';
import css from './losses.module.css';

export const metadata: Metadata = { title: 'Losses' };

const lookedBackDays = 365;

/** What is lost, where and why; and what the studio has learned of it. */
export default async function LossesPage() {
  const actor = await requireActor('studio.see');
  const { timeZone } = await getGallery();
  const sinceOn = addDays(dayOf(now(), timeZone), -lookedBackDays);
  const [routes, lost] = await Promise.all([listLearnedLosses(actor), listLostFor(actor, sinceOn)]);
  return (
    <>
      <PageHead
        title="Losses"
        lead="Clay cracks, glazes run. What was counted here takes the place of what is commonly thought, piece by piece."
      />
      <InThisRoom room="studio" here="losses" roles={actor.roles} />
      <Section title="Why, in the last year">
        <Causes lost={lost} />
      </Section>
      {routes.map((route) => (
        <Section key={route.routeId} title={route.name}>
          <LearnedTable route={route} />
        </Section>
      ))}
      <Working
        steps={[
          'what is stated of a step counts as twenty pieces that were seen before',
          'each piece that left the step here, or was lost there, is added to them',
        ]}
        formula="lost of those seen, over all that were seen; between which shares it lies in 19 of 20 cases"
        source="beta distribution of a binomial share (Gelman and others, Bayesian Data Analysis, 2.4; from memory)"
        caution="A shelf that falls takes many at once: no count of spare pieces covers that."
      />
    </>
  );
}

function Causes({ lost }: Readonly<{ lost: readonly LostFor[] }>) {
  if (lost.length === 0) {
    return (
      <Empty title="Nothing was lost yet">
        When pieces crack or a glaze fails, it is told at the bench in three touches: how many, and
        why. Here it is seen what happens most.
      </Empty>
    );
  }
  const most = Math.max(...lost.map(({ pieces }) => pieces));
  return (
    <table className={css['causes']}>
      <thead className="heard-only">
        <tr>
          <th scope="col">Why</th>
          <th scope="col">How many</th>
        </tr>
      </thead>
      <tbody>
        {lost.map(({ cause, step, pieces }) => (
          <tr key={`${cause} ${step}`}>
            <th scope="row">
              {lossCauseWords[cause]}, at {step}
            </th>
            <td>
              <svg
                className={css['bar']}
                viewBox="0 0 100 10"
                preserveAspectRatio="none"
                aria-hidden="true"
              >
                <rect width={(pieces / most) * 100} height="10" />
              </svg>
              {piecesWords(pieces)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
