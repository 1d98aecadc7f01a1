import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { getBench, type Bench } from '@/lib/studio/reads';
import { findMove } from '@/lib/studio/reads/job';
import { undoMoveInput } from '@/lib/studio/input';
import { piecesWords } from '@/lib/studio/rules/words';
import { BenchRow } from './bench-row';
import { Glance } from './glance';
import { JustMoved } from './just-moved';
import css from './studio.module.css';

export const metadata: Metadata = { title: 'Studio' };

type StudioPageProps = Readonly<{ searchParams: Promise<{ moved?: string | string[] }> }>;

/** The studio: what stands at which step, from clay to finished, and one touch to move it on. */
export default async function StudioPage({ searchParams }: StudioPageProps) {
  const actor = await requireActor('studio.see');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const bench = await getBench(actor, todayOn);
  const read = undoMoveInput.shape.moveId.safeParse((await searchParams).moved);
  const move = read.success ? await findMove(actor, read.data) : null;
  const mayMove = isAllowed(actor.roles, 'studio.move');
  const shared = { todayOn, mayMove };
  return (
    <>
      <PageHead title="Studio" lead={leadOf(bench)}>
        {mayMove ? <ButtonLink href="/studio/new">Begin something new</ButtonLink> : null}
      </PageHead>
      <InThisRoom room="studio" here="bench" roles={actor.roles} />
      <Glance bench={bench} />
      <div className={css['bench']}>
        {bench.notBegun.length > 0 ? (
          <BenchRow name="to begin" standing={bench.notBegun} {...shared} />
        ) : null}
        {bench.rows.map((row) => (
          <BenchRow key={row.name} name={row.name} standing={row.standing} {...shared} />
        ))}
        {bench.finished.length > 0 ? (
          <BenchRow name="finished" standing={bench.finished} {...shared} />
        ) : null}
      </div>
      {isBare(bench) ? <BareBench mayMove={mayMove} /> : null}
      {move ? <JustMoved move={move} mayMove={mayMove} backTo="bench" /> : null}
    </>
  );
}

function isBare(bench: Bench): boolean {
  return bench.notBegun.length + bench.rows.length + bench.finished.length === 0;
}

function leadOf(bench: Bench): string {
  const underWay = bench.rows.reduce((sum, row) => sum + row.pieces, 0);
  if (underWay === 0) return 'Nothing is in the clay just now.';
  const are = underWay === 1 ? 'is' : 'are';
  return `${piecesWords(underWay)} ${are} under way, from clay to finished.`;
}

function BareBench({ mayMove }: Readonly<{ mayMove: boolean }>) {
  return (
    <Section title="On the bench">
      <Empty
        title="The bench is clear"
        act={mayMove ? <ButtonLink href="/studio/new">Begin something new</ButtonLink> : null}
      >
        Whatever is made stands here at its step: clay, drying, kiln, glaze, assembly. A commission
        puts its job here once its making is planned on its own sheet; pieces for stock are begun
        here.
      </Empty>
    </Section>
  );
}
