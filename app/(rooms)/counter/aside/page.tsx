import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listSlipsAside, type SlipAside } from '@/lib/counter/reads/aside';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { throwAway } from '../actions';
import { counterHref } from '../address';
import css from '../counter.module.css';

export const metadata: Metadata = { title: 'Set aside' };

/** Slips that wait: taken up on any device, or thrown away. */
export default async function AsidePage() {
  const actor = await requireActor('counter.sell');
  const [slips, { timeZone }] = await Promise.all([
    listSlipsAside({ actor, at: now() }),
    getGallery(),
  ]);
  return (
    <>
      <PageHead title="Set aside" lead="Slips that wait, the newest first." />
      <InThisRoom room="counter" here="aside" roles={actor.roles} />
      {slips.length === 0 ? (
        <Empty title="No slip waits">
          At the counter, a slip with something on it can be set aside under a few words, while
          somebody looks once more or fetches a friend. Then it waits here, for any device.
        </Empty>
      ) : (
        <ul className={css['lines']} aria-label="Slips that wait">
          {slips.map((slip) => (
            <Waiting key={slip.id} slip={slip} zone={timeZone} />
          ))}
        </ul>
      )}
    </>
  );
}

function Waiting({ slip, zone }: Readonly<{ slip: SlipAside; zone: string }>) {
  const { id, asideAs, collector, staffName, changedAt, titles, totalCents } = slip;
  return (
    <li className={css['waiting']}>
      <div className={css['line-words']}>
        <p className={css['result-title']}>{asideAs ?? collector ?? 'Begun, and left'}</p>
        <p>{titles.join(', ')}</p>
        <p className={css['quiet']}>
          {collector && asideAs !== null ? `for ${collector} · ` : ''}
          {staffName}, <InstantText at={changedAt} zone={zone} />
        </p>
      </div>
      <p className={css['line-sum']}>
        {totalCents === null ? 'its fair is over' : <Money cents={totalCents} size="strong" />}
      </p>
      <div className={css['take']}>
        <ButtonLink href={counterHref(id)} size="counter">
          Take it up
        </ButtonLink>
        <FormFrame action={throwAway} label={`Throw ${asideAs ?? 'it'} away`}>
          <input type="hidden" name="slipId" value={id} />
          <SubmitButton variant="danger" size="counter">
            Throw away
          </SubmitButton>
        </FormFrame>
      </div>
    </li>
  );
}
