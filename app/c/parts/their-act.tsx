import type { ReactNode } from 'react';
import { PageHead } from '@/app/ui/page/page-head';
import type { OpenPage } from '../open-page';
import { ReachGallery } from './reach-gallery';

type TheirActProps = Readonly<{
  page: OpenPage;
  title: string;
  lead?: ReactNode;
  children: ReactNode;
}>;

/** A page on which a collector decides one thing, and the way back to their page. */
export function TheirAct({ page, title, lead, children }: TheirActProps) {
  return (
    <>
      <PageHead
        title={title}
        lead={lead}
        back={{ href: `/c/${page.token}`, name: page.link.title }}
      />
      {children}
      <ReachGallery gallery={page.gallery} />
    </>
  );
}

/** The hidden field that opens the page anew when a form of it is sent. */
export function ByThisAddress({ page }: Readonly<{ page: OpenPage }>) {
  return <input type="hidden" name="token" value={page.token} />;
}
