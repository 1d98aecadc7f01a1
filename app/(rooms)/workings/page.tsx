import type { Metadata } from 'next';
import Link from 'next/link';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { findWorking, workings } from '@/lib/workings/list';
import { WorkOut } from './work-out';
import css from './workings.module.css';

export const metadata: Metadata = { title: 'Workings' };

type WorkingsPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** Every calculation of the house by its name, and one of them to be worked out by hand. */
export default async function WorkingsPage({ searchParams }: WorkingsPageProps) {
  await requireActor('workings.see');
  const typed = typedIn(await searchParams);
  const chosen = findWorking(typed['name'] ?? '') ?? workings[0];
  return (
    <>
      <PageHead
        title="Workings"
        lead="Every figure that is worked out here, how it is done and where it comes from. Try one with numbers of your own."
      />
      <Columns
        wide={chosen ? <WorkOut working={chosen} typed={typed} /> : null}
        beside={<Names current={chosen?.name} />}
      />
    </>
  );
}

function typedIn(search: Record<string, string | string[]>): Record<string, string> {
  const once = Object.entries(search).map(([key, value]) => [
    key,
    (Array.isArray(value) ? value.join(',') : value).slice(0, typedMost),
  ]);
  return Object.fromEntries(once) as Record<string, string>;
}

/** The longest text that one field takes. */
const typedMost = 4_000;

function Names({ current }: Readonly<{ current: string | undefined }>) {
  return (
    <nav aria-label="Calculations">
      <ul className={css['names']}>
        {workings.map((working) => (
          <li key={working.name}>
            <Link
              href={`/workings?name=${working.name}`}
              aria-current={working.name === current ? 'page' : undefined}
            >
              {working.title}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
