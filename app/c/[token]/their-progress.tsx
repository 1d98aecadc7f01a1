import { DayText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import { progressForCollector } from '@/lib/commissions/reads/course/progress';
import type { OpenPage } from '../open-page';

/** How it comes along: what the studio chose to show, the newest first. */
export async function TheirProgress({ page }: Readonly<{ page: OpenPage }>) {
  const { link, token } = page;
  const progress = await progressForCollector(link.commissionId);
  if (progress.length === 0) return null;
  return (
    <Section title="How it comes along">
      <Wall label="Pictures and words from the studio">
        {progress.toReversed().map((each) => (
          <Hung key={each.id}>
            {each.picture && each.fileId ? (
              <Picture {...each.picture} src={`/c/${token}/picture/${each.fileId}`} size="hung" />
            ) : null}
            <p>
              {each.words}, <DayText day={each.on} />
            </p>
          </Hung>
        ))}
      </Wall>
    </Section>
  );
}
