import 'server-only';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { noteUse, openLink, type OpenLink } from '@/lib/commissions/reads/page/open-link';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';

/** The secret in the address, as Next hands it on. */
export type TokenParams = Promise<{ token: string }>;

/** A page that has opened: everything on it is read by the commission of its address alone. */
export type OpenPage = { link: OpenLink; token: string; gallery: Gallery; at: Date };

const openOnce = cache(async (token: string): Promise<OpenPage | null> => {
  const at = now();
  const link = await openLink(token, at);
  return link && { link, token, at, gallery: await getGallery() };
});

/** The page behind the address; "no longer opens" for anything else, without saying why. */
export async function openPage(params: TokenParams): Promise<OpenPage> {
  const { token } = await params;
  const page = await openOnce(token);
  if (!page) notFound();
  await noteUse(page.link, page.at);
  return page;
}

/** The same for what is fetched by the page: null where it does not open. */
export async function openForFile(params: Promise<{ token: string }>): Promise<OpenPage | null> {
  return openOnce((await params).token);
}
