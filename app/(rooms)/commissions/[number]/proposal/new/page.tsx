import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listProposals, readBuildUp } from '@/lib/commissions/reads/proposal/proposals';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import { listTaxPlaces } from '@/lib/commissions/reads/tax-places';
import { workOutPrice } from '@/lib/commissions/rules/proposal/work-out';
import { findKeptDay } from '@/lib/studio/reads/forecast/asked';
import { ActPage } from '../../act-page';
import { readSheetFor, type SheetParams } from '../../read-sheet';
import { LinesShown, WorkedOut } from '../worked-out';
import { FiguresForm } from './figures-form';
import { KeepForm } from './keep-form';
import { readSaid, saidOf, type Asked } from './said';

export const metadata = { title: 'Write a proposal' };

type NewProposalProps = Readonly<{ params: SheetParams; searchParams: Promise<Asked> }>;

/** A price worked out from the piece; then the proposal that is kept. */
export default async function NewProposal({ params, searchParams }: NewProposalProps) {
  const actor = await requireActor('commissions.propose');
  const sheet = await readSheetFor(actor, params, 'proposal');
  const [terms, proposals, places, kept] = await Promise.all([
    readCommissionTerms(),
    listProposals(actor, sheet.id),
    listTaxPlaces(actor),
    findKeptDay(actor, sheet.id),
  ]);
  const last = proposals[0] ?? null;
  const { currency } = sheet.telling;
  const said = saidOf({
    asked: await searchParams,
    last: last && (await readBuildUp(actor, last.id)),
    ...{ request: sheet.request, terms, lengthUnit: sheet.gallery.lengthUnit },
  });
  const read = readSaid(said);
  const worked = 'read' in read ? workOutPrice(read.read, terms.basis) : null;
  return (
    <ActPage
      sheet={sheet}
      title={`Proposal ${proposals.length + 1}`}
      lead="First the figures, for your eyes alone. Then what goes out. Every version stays."
    >
      <FiguresForm said={said} faults={'faults' in read ? read.faults : {}} />
      {worked ? (
        <>
          <Section title="What it comes to">
            <WorkedOut worked={worked} currency={currency} />
          </Section>
          <Section title="What goes out">
            <LinesShown lines={worked.lines} currency={currency} />
            <KeepForm {...{ sheet, said, last, terms, places, kept }} />
          </Section>
        </>
      ) : (
        <Notice kind="caution">
          {'faults' in read
            ? 'Look at what is marked above, then work it out.'
            : 'Your own price does not cover what stands apart, or the piece is too large.'}
        </Notice>
      )}
    </ActPage>
  );
}
