import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import type { OpenPage } from '../open-page';
import { shownOnce } from './shown-once';

/** What they said yes to: the sketch and the colour tiles, to be looked at again. */
export async function TheirChosen({ page }: Readonly<{ page: OpenPage }>) {
  const { link, token } = page;
  const chosen = (await shownOnce(link.commissionId)).filter(({ yes }) => yes !== null);
  if (chosen.length === 0) return null;
  return (
    <Section title="What was chosen">
      <Wall label="The sketch and the colours that were chosen">
        {chosen.map(({ id, what, label, picture, fileId, yes }) => (
          <Hung key={id}>
            <Picture {...picture} src={`/c/${token}/picture/${fileId}`} size="hung" />
            <p>
              <Link href={`/c/${token}/shown/${id}`}>
                {what === 'sketch' ? `Sketch ${label}` : `Colour tile ${label}`}
              </Link>
              {yes ? (
                <>
                  , yes on <DayText day={yes.approvedOn} />
                </>
              ) : null}
            </p>
          </Hung>
        ))}
      </Wall>
    </Section>
  );
}
