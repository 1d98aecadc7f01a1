import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput } from '@/lib/studio/input';
import { findJobToDraw, type JobToDraw } from '@/lib/studio/reads/parts/drawing';
import { listPartHistory } from '@/lib/studio/reads/parts/history';
import { findForetold, findPartMap, listBuckets } from '@/lib/studio/reads/parts/map';
import { drawnShapes } from './drawn-shapes';
import { areasOf, choosableOf, nextNamesOf, placesOf } from './groups';
import { HoldingUp } from './holding-up';
import { MovedJustNow } from './moved-just-now';
import { PartBoard } from './part-board';
import { PartPanel } from './part-panel';
import { PartsTable } from './parts-table';
import { SafeThroughFires } from './safe-through-fires';

type PartsPageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

export async function generateMetadata({ params }: PartsPageProps): Promise<Metadata> {
  return { title: `Parts of job ${(await params).number}` };
}

/** The piece map of a job: where every numbered part stands, and what can be done with each. */
export default async function PartsPage({ params, searchParams }: PartsPageProps) {
  const actor = await requireActor('studio.see');
  const number = jobNumberInput.safeParse((await params).number);
  if (!number.success) notFound();
  const map = await findPartMap(actor, number.data);
  if (!map) {
    const job = await findJobToDraw(actor, number.data);
    if (!job) notFound();
    return <NotDrawn job={job} actor={actor} />;
  }
  const asked = await searchParams;
  const gallery = await getGallery();
  const looked = map.numbers.find((each) => String(each.number) === asked['part']);
  const [told, buckets, foretold] = await Promise.all([
    looked ? listPartHistory(actor, { jobId: map.jobId, number: looked.number }) : [],
    listBuckets(actor, map.commissionNumber),
    findForetold(actor, map.jobId),
  ]);
  const mayMove = isAllowed(actor.roles, 'studio.move');
  const mayDraw = isAllowed(actor.roles, 'studio.keep') && !map.isBegun;
  const shared = { jobId: map.jobId, buckets, todayOn: dayOf(now(), gallery.timeZone) };
  const nextNames = nextNamesOf(map.steps);
  return (
    <>
      <PageHead
        title={map.title}
        work
        back={{ href: `/studio/${map.jobNumber}`, name: `Job ${map.jobNumber}` }}
        lead={`${map.numbers.length} numbered parts.`}
      >
        {mayDraw ? (
          <ButtonLink href={`/studio/${map.jobNumber}/parts/draw`}>Change the drawing</ButtonLink>
        ) : null}
        <ButtonLink href={`/studio/${map.jobNumber}/parts/pdf`} variant="quiet">
          Print the drawing
        </ButtonLink>
        {map.shrinkagePercent === null ? null : (
          <ButtonLink href={`/studio/${map.jobNumber}/parts/template/pdf`} variant="quiet">
            Print it at wet size
          </ButtonLink>
        )}
      </PageHead>
      <InThisRoom room="studio" here="" roles={actor.roles} />
      <SafeThroughFires fires={map.fires} safe={map.safe} foretold={foretold} />
      <Columns
        wide={
          <PartBoard
            {...shared}
            {...{ nextNames, mayMove }}
            jobNumber={map.jobNumber}
            shapes={drawnShapes(map)}
            aspect={map.size.heightUm / map.size.widthUm}
            label={`The numbered drawing of ${map.title}`}
            parts={choosableOf(map)}
            places={placesOf(map)}
            areas={areasOf(map)}
            looked={looked?.number ?? null}
          />
        }
        beside={
          <>
            {looked ? (
              <PartPanel
                {...{ map, told, shared, nextNames, mayMove }}
                now={looked}
                lengthUnit={gallery.lengthUnit}
              />
            ) : null}
            <HoldingUp map={map} />
          </>
        }
      />
      <Section title="All the parts">
        <PartsTable map={map} lengthUnit={gallery.lengthUnit} />
      </Section>
      <MovedJustNow actor={actor} moved={asked['moved']} mayMove={mayMove} />
    </>
  );
}

function NotDrawn({ job, actor }: Readonly<{ job: JobToDraw; actor: Actor }>) {
  const mayDraw = isAllowed(actor.roles, 'studio.keep') && !job.isBegun;
  return (
    <>
      <PageHead
        title={job.title}
        work
        back={{ href: `/studio/${job.number}`, name: `Job ${job.number}` }}
      />
      <InThisRoom room="studio" here="" roles={actor.roles} />
      <Empty
        title="It has no numbered drawing"
        act={
          mayDraw ? (
            <ButtonLink href={`/studio/${job.number}/parts/draw`}>Draw its parts</ButtonLink>
          ) : null
        }
      >
        {job.isBegun
          ? 'Its clay was begun without one, so its pieces go by their count. The drawing of another job is made before its clay.'
          : 'A large relief is many fired parts, each with a fate of its own. Drawn and numbered over the sketch, each of them is followed from the clay to the wall.'}
      </Empty>
    </>
  );
}
