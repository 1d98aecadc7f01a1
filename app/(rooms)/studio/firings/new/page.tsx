import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listWaitingFor } from '@/lib/studio/reads/firings/queues';
import { listKilns, type KilnInList } from '@/lib/studio/reads/kilns/kiln';
import type { ConeWaiting } from '@/lib/studio/rules/firings/queue';
import { firingKindWords } from '@/lib/studio/rules/firings/schedule';
import { neededWords } from '@/lib/studio/rules/firings/words';
import { piecesWords, sinceWords } from '@/lib/studio/rules/words';
import { weekSentence } from '../../kilns/kiln-words';
import { loadWords } from '../../kilns/waiting-table';
import { sendPlan } from '../actions';
import css from '../firings.module.css';

export const metadata: Metadata = { title: 'Plan a firing' };

type NewFiringProps = Readonly<{ searchParams: Promise<{ kiln?: string | string[] }> }>;

/** Which kiln, and which cone: what waits for it, and how full a load of it is. */
export default async function NewFiring({ searchParams }: NewFiringProps) {
  const actor = await requireActor('studio.move');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const kilns = (await listKilns(actor, todayOn)).filter((kiln) => kiln.retiredOn === null);
  const { kiln: asked } = await searchParams;
  const kiln = kilns.find(({ id }) => id === asked) ?? kilns[0];
  const [cones = []] = kiln ? await listWaitingFor(actor, [kiln], todayOn) : [];
  return (
    <>
      <PageHead
        title="Plan a firing"
        back={{ href: '/studio/kilns', name: 'Kilns' }}
        lead="What is needed sooner and has waited longer is laid in first. You change it before it is lit."
      />
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {kiln ? (
        <>
          <Views
            label="Which kiln"
            views={kilns.map((one) => ({
              href: `/studio/firings/new?kiln=${one.id}`,
              name: one.name,
              current: one.id === kiln.id,
            }))}
          />
          <p>{weekSentence(kiln)}</p>
          {cones.length === 0 ? (
            <Empty title={`Nothing waits for ${kiln.name}`}>
              Pieces wait here once they are moved on to a kiln at the bench.
            </Empty>
          ) : null}
          <div className={css['lines']}>
            {cones.map((cone) => (
              <ConeToPlan
                key={`${cone.kind} ${cone.cone}`}
                kiln={kiln}
                cone={cone}
                todayOn={todayOn}
              />
            ))}
          </div>
        </>
      ) : (
        <Empty
          title="No kiln is written down yet"
          act={<ButtonLink href="/studio/kilns/new">Write the first down</ButtonLink>}
        >
          A load is laid out in the room of a kiln.
        </Empty>
      )}
    </>
  );
}

type ConeToPlanProps = Readonly<{ kiln: KilnInList; cone: ConeWaiting; todayOn: Day }>;

function ConeToPlan({ kiln, cone, todayOn }: ConeToPlanProps) {
  const name = `${firingKindWords[cone.kind]}, cone ${cone.cone}`;
  return (
    <section className={css['cone']} aria-label={name}>
      <h3>{name}</h3>
      <p>
        {piecesWords(cone.pieces)} wait; a load would hold {cone.loadPieces}, {loadWords(cone)}.
      </p>
      <ul className={css['jobs']}>
        {cone.jobs.map((job) => (
          <li key={`${job.jobId} ${job.position}`}>
            Job {job.jobNumber}, <cite>{job.title}</cite>: {piecesWords(job.pieces)}{' '}
            {sinceWords(job.sinceOn, todayOn)}, {neededWords(job.neededOn, todayOn)}
            {job.againPieces > 0 ? `, ${job.againPieces} of them to fire again` : ''}
            {job.lying === null ? '; their size is missing' : ''}
          </li>
        ))}
      </ul>
      <FormFrame action={sendPlan} label={`Plan ${name}`}>
        <RequestKey />
        <input type="hidden" name="kilnId" value={kiln.id} />
        <input type="hidden" name="kind" value={cone.kind} />
        <input type="hidden" name="cone" value={cone.cone} />
        <Field
          name="plannedOn"
          label="For which day"
          kind="day"
          width="short"
          defaultValue={todayOn}
          required
        />
        <SubmitButton size="counter">Lay it in</SubmitButton>
      </FormFrame>
    </section>
  );
}
