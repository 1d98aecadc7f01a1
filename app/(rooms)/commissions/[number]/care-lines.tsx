import { LookLines } from '@/app/(rooms)/diary/after-care/look-lines';
import { SetLooks } from '@/app/(rooms)/diary/after-care/set-looks';
import { SnagLines } from '@/app/(rooms)/diary/after-care/snag-lines';
import { WriteSnag } from '@/app/(rooms)/diary/after-care/write-snag';
import { Section } from '@/app/ui/page/section';
import { isAllowed, type Actor } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { listLooksOf } from '@/lib/installation/reads/care/looks';
import { listSnagsOf } from '@/lib/installation/reads/work/snags';
import css from '../commissions.module.css';

type CareLinesProps = Readonly<{ sheet: Sheet; actor: Actor }>;

/** What is to be put right of a piece, and the looks after it; nothing before a day is booked. */
export async function CareLines({ sheet, actor }: CareLinesProps) {
  const [snags, looks] = await Promise.all([
    listSnagsOf(actor, sheet.id),
    listLooksOf(actor, sheet.id),
  ]);
  const isFar = sheet.facts.appointments.length === 0 && sheet.handOver === null;
  if (snags.length + looks.length === 0 && isFar) return null;
  const look = isAllowed(actor.roles, 'installation.do') && sheet.ending === null;
  const book = isAllowed(actor.roles, 'diary.book') && sheet.handOver !== null;
  const { today } = sheet.telling;
  return (
    <Section title="Snags, and looking after it" id="care">
      {snags.length === 0 ? <p className={css['quiet']}>Nothing is to be put right.</p> : null}
      <SnagLines snags={snags} today={today} mayMend={look} />
      {look ? <WriteSnag commissionId={sheet.id} actor={actor} /> : null}
      <LookLines looks={looks} today={today} may={{ look, book }} />
      {looks.length === 0 ? <NoLooks sheet={sheet} maySet={look} /> : null}
    </Section>
  );
}

function NoLooks({ sheet, maySet }: Readonly<{ sheet: Sheet; maySet: boolean }>) {
  if (sheet.handOver !== null && maySet) return <SetLooks commissionId={sheet.id} />;
  return (
    <p className={css['quiet']}>
      The looks after it are set when it is signed for on the work order of its day.
    </p>
  );
}
