import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { readAddress, textOf, type Query } from '@/app/(rooms)/stock/places/ready/address';
import css from '@/app/(rooms)/stock/places/ready/ready.module.css';
import { ToTouch } from '@/app/(rooms)/stock/places/ready/to-touch';
import { requireActor } from '@/lib/access/reads';
import { findGalleryTerms, listWithThem, type GalleryTerms } from '@/lib/consignment/reads';
import { listStatements } from '@/lib/consignment/reads/statements';
import { readTold, toldMost } from '@/lib/consignment/rules/told';
import { addDays, dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listStanding } from '@/lib/stock/reads/moves/places';
import { layReady } from '@/lib/stock/rules/moves/move';
import { StatementForm } from './statement-form';

export const metadata: Metadata = { title: 'They sold something' };

type PageProps = Readonly<{ params: Promise<{ id: string }>; searchParams: Promise<Query> }>;

/** Writes down what another gallery sold: their list first, then each line with its day and price. */
export default async function SoldPage({ params, searchParams }: PageProps) {
  const actor = await requireActor('outside.keep');
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const gallery = await findGalleryTerms(actor, id);
  if (!gallery || gallery.endedOn !== null) notFound();
  const at = now();
  const [pieces, [last], standing, { timeZone }] = await Promise.all([
    listWithThem(actor, gallery, at),
    listStatements(actor, gallery.consigneeId),
    listStanding(actor, gallery.placeId, { letters: '', page: 1, limit: 60 }),
    getGallery(),
  ]);
  const asked = readAddress(`/galleries/${gallery.consigneeId}/sold`, query, {});
  const told = readTold(textOf(query, 'list'), pieces);
  const ready = told.matched.reduce(layReady, [...asked.ready]);
  const today = dayOf(at, timeZone);
  const next = last ? addDays(last.untilOn, 1) : gallery.sinceOn;
  return (
    <>
      <Head gallery={gallery} />
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      {pieces.length === 0 ? (
        <Empty title="Nothing of ours is with them">
          By our books nothing is there that they could have sold. Send pieces first.
        </Empty>
      ) : (
        <div className={css['side']}>
          <TheirList path={asked.path} unmatched={told.unmatched} />
          {ready.length > 0 ? (
            <StatementForm
              gallery={gallery}
              ready={ready}
              pieces={pieces}
              fromOn={next > today ? today : next}
              untilOn={today}
            />
          ) : null}
          <Section title="Or touch what they sold">
            <div className={css['side']}>
              <ToTouch
                address={{ ...asked, ready }}
                pieces={standing.pieces}
                label="What is with them"
              />
            </div>
          </Section>
        </div>
      )}
    </>
  );
}

function Head({ gallery }: Readonly<{ gallery: GalleryTerms }>) {
  return (
    <PageHead
      title="They sold something"
      back={{ href: `/galleries/${gallery.consigneeId}`, name: gallery.name }}
      lead={`Their share is ${gallery.sharePercent}% of the retail price; they charge the tax themselves.`}
    />
  );
}

type TheirListProps = Readonly<{ path: string; unmatched: readonly string[] }>;

function TheirList({ path, unmatched }: TheirListProps) {
  return (
    <div className={css['side']}>
      {unmatched.length > 0 ? (
        <Notice kind="caution" title="Ask them about these">
          By our books they are not with them: {unmatched.slice(0, 20).join(', ')}
          {unmatched.length > 20 ? ` and ${unmatched.length - 20} more` : ''}.
        </Notice>
      ) : null}
      <details open={unmatched.length > 0}>
        <summary>Look their list up by piece numbers</summary>
        <form action={path} className={css['side']}>
          <Field
            name="list"
            label="The piece numbers on their list"
            hint="One on each line. An edition with its number behind it; x2 where they sold two."
            kind="textarea"
            rows={5}
            maxLength={toldMost}
          />
          <div>
            <Button type="submit" variant="quiet" size="counter">
              Look them up
            </Button>
          </div>
        </form>
      </details>
    </div>
  );
}
