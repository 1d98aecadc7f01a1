import Link from 'next/link';
import { Notice } from '@/app/ui/page/notice';
import type { StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import { forecastRefusalMessage, type ForecastRefusal } from '@/lib/studio/rules/forecast/model';

const ways: Readonly<Record<ForecastRefusal['code'], { href: string; name: string }>> = {
  never_open: { href: '/studio/ways', name: 'The ways of the studio' },
  too_many_pieces: { href: '/studio', name: 'The bench' },
  no_such_bench: { href: '/studio/routes', name: 'The routes' },
  no_kiln_for_cone: { href: '/studio/kilns', name: 'The kilns' },
  piece_fits_no_kiln: { href: '/studio/kilns', name: 'The kilns' },
};

/** What is missing before a day can be told, and where it is written down. */
export function Missing({ load }: Readonly<{ load: StudioLoad }>) {
  const guessed = load.jobs.filter(({ sizeFrom }) => sizeFrom === 'usual').length;
  return (
    <>
      {load.studio.kilns.length === 0 ? (
        <Notice kind="caution" title="No kiln is written down yet">
          Every piece goes through one, so no day can be told.{' '}
          <Link href="/studio/kilns/new">Write the first kiln down</Link>.
        </Notice>
      ) : (
        load.stuck.map(({ of, refusal }) => (
          <Notice key={of.job.id} kind="caution" title={`No day can be told of job ${of.number}`}>
            {forecastRefusalMessage(refusal)}{' '}
            <Link href={ways[refusal.code].href}>{ways[refusal.code].name}</Link>
          </Notice>
        ))
      )}
      {guessed > 0 ? (
        <p>
          {guessed === 1 ? 'Of one job nobody' : `Of ${guessed} jobs nobody`} wrote the size of a
          piece down. It is taken to be eight inches square and one thick.
        </p>
      ) : null}
    </>
  );
}
