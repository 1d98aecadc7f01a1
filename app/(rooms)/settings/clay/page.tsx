import type { Metadata } from 'next';
import Link from 'next/link';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listBodies, type ClayBodyKept } from '@/lib/commissions/reads/enquiry/bodies';
import { bodySentence } from '@/lib/commissions/rules/enquiry/body-words';
import css from '../settings.module.css';
import { BodyForm } from './body-form';

export const metadata: Metadata = { title: 'Clay bodies' };

type ClayBodiesProps = Readonly<{ searchParams: Promise<{ done?: string | string[] }> }>;

const doneWords: Readonly<Record<string, string>> = {
  added: 'The clay body is written down. Commissions can choose it now.',
  changed: 'What is known now is written down; what to mind is told by it from now on.',
};

/** The clay bodies of the studio, with what is known of each. */
export default async function ClayBodies({ searchParams }: ClayBodiesProps) {
  const actor = await requireActor('catalogue.keep');
  const bodies = await listBodies(actor);
  const { done } = await searchParams;
  const sentence = typeof done === 'string' ? doneWords[done] : undefined;
  return (
    <>
      <PageHead
        title="Clay bodies"
        lead="What a fired body takes up of water decides where a piece can live."
      />
      <InThisRoom room="settings" here="clay" roles={actor.roles} />
      {sentence ? <Notice kind="done">{sentence}</Notice> : null}
      <Columns
        wide={
          <Section title="Written down">
            <BodyList bodies={bodies} />
          </Section>
        }
        beside={
          <Section title="Another clay body">
            <BodyForm body={null} />
          </Section>
        }
      />
      <Caution>
        a figure from the bag is the maker’s, fired as they fire. Measure bars of your own firing,
        and let a laboratory test what will live in frost.
      </Caution>
    </>
  );
}

function BodyList({ bodies }: Readonly<{ bodies: readonly ClayBodyKept[] }>) {
  if (bodies.length === 0) {
    return (
      <Empty title="No clay body is written down yet">
        Write the first one down here. A commission can choose it then, and says what to mind.
      </Empty>
    );
  }
  return (
    <ul>
      {bodies.map((body) => (
        <li key={body.id}>
          <Link href={`/settings/clay/${body.id}`} className={css['place']}>
            <span>
              <span className={css['name']}>{body.name}</span>{' '}
              <span className={css['quiet']}>{bodySentence(body)}</span>
            </span>
            <span className={css['figure']}>
              {body.absorptionPercent === null ? '' : `${body.absorptionPercent} %`}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
