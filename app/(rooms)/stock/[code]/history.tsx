import Link from 'next/link';
import { requireActor } from '@/lib/access/reads';
import { readStory } from '@/lib/stock/reads/moves/story';
import type { PieceSheet } from '@/lib/stock/reads/stock-room';
import css from '../stock.module.css';
import { StoryList } from './moves/story-list';

type HistoryProps = Readonly<{ sheet: PieceSheet; timeZone: string }>;

/** How many sentences a piece's own page tells; the rest stands on a page of its own. */
const sentencesHere = 12;

/** What happened to a piece lately, the newest first, as sentences. */
export async function History({ sheet, timeZone }: HistoryProps) {
  const actor = await requireActor('stock.see');
  const { piece } = sheet;
  const story = await readStory(actor, piece.id, { page: 1, limit: sentencesHere });
  if (story.inAll === 0) return <p className={css['quiet']}>Nothing has come or gone yet.</p>;
  return (
    <>
      <StoryList story={story} timeZone={timeZone} roles={actor.roles} />
      {story.pages > 1 ? (
        <p>
          <Link href={`/stock/${piece.code}/moves`}>
            The whole story, {story.inAll.toLocaleString('en-US')} sentences
          </Link>
        </p>
      ) : null}
    </>
  );
}
