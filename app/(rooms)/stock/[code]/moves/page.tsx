import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { pageInput } from '@/lib/stock/input';
import { findByCode } from '@/lib/stock/reads';
import { readStory } from '@/lib/stock/reads/moves/story';
import { Leaves } from '../../leaves';
import { StoryList } from './story-list';

export const metadata: Metadata = { title: 'The story of a piece' };

type StoryPageProps = Readonly<{
  params: Promise<{ code: string }>;
  searchParams: Promise<Record<string, string | string[]>>;
}>;

/** The whole story of a piece, leaf by leaf, the newest first. */
export default async function StoryPage({ params, searchParams }: StoryPageProps) {
  const actor = await requireActor('stock.see');
  const [{ code }, query] = await Promise.all([params, searchParams]);
  const piece = await findByCode(actor, code);
  if (!piece) notFound();
  const { page } = pageInput.parse(query);
  const [story, { timeZone }] = await Promise.all([
    readStory(actor, piece.id, { page }),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title={piece.title}
        work
        back={{ href: `/stock/${piece.code}`, name: piece.code }}
        lead="What happened to it, the newest first. The figure at the right is how many there were at all places then."
      />
      <InThisRoom room="stock" here="pieces" roles={actor.roles} />
      <StoryList story={story} timeZone={timeZone} roles={actor.roles} />
      <Leaves
        page={story.page}
        pages={story.pages}
        hrefOf={(leaf) => `/stock/${piece.code}/moves?page=${leaf}`}
      />
    </>
  );
}
