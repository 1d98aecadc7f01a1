import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput } from '@/lib/studio/input';
import { findJobToDraw, type JobToDraw } from '@/lib/studio/reads/parts/drawing';
import { DrawingBoard } from './drawing-board';

export const metadata: Metadata = { title: 'The numbered drawing' };

type DrawPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** The board on which the relief of a job is cut into numbered parts, over its sketch. */
export default async function DrawPage({ params }: DrawPageProps) {
  const actor = await requireActor('studio.keep');
  const number = jobNumberInput.safeParse((await params).number);
  const job = number.success ? await findJobToDraw(actor, number.data) : null;
  if (!job) notFound();
  const { lengthUnit } = await getGallery();
  return (
    <>
      <PageHead
        title={job.title}
        work
        back={{ href: `/studio/${job.number}/parts`, name: `Parts of job ${job.number}` }}
        lead={leadOf(job)}
      />
      <InThisRoom room="studio" here="" roles={actor.roles} />
      {job.isBegun ? (
        <Empty
          title="The drawing stays as it is"
          act={<ButtonLink href={`/studio/${job.number}/parts`}>See the parts</ButtonLink>}
        >
          The clay of this job was begun, and its numbers stand on the backs of the parts. Another
          drawing belongs to another job.
        </Empty>
      ) : (
        <>
          {isOtherShape(job) ? (
            <Notice kind="caution">
              The sketch is not as wide and high as the relief is to be; it is stretched here to
              fit.
            </Notice>
          ) : null}
          <DrawingBoard
            jobId={job.id}
            jobNumber={job.number}
            over={job.over}
            version={job.drawing?.version ?? 0}
            shapes={job.drawing?.shapes ?? []}
            by={job.drawing?.by ?? ''}
            size={job.drawing ?? job.wished}
            shrinkagePercent={job.shrinkagePercent}
            lengthUnit={lengthUnit}
          />
        </>
      )}
    </>
  );
}

function leadOf({ over }: JobToDraw): string {
  const ground = over ? `over ${over.words}` : 'on an empty ground, because there is no sketch yet';
  return `Cut the relief into its numbered parts, ${ground}.`;
}

/** A sketch may be a hair off; what is off by more than three in a hundred is told. */
function isOtherShape({ over, drawing, wished }: JobToDraw): boolean {
  const size = drawing ?? wished;
  if (!size || !over?.widthPx || !over.heightPx) return false;
  const off = (over.heightPx / over.widthPx) * (size.widthUm / size.heightUm);
  return Math.abs(off - 1) > 0.03;
}
