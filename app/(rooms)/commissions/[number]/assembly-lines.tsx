import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { isAllowed, type Actor } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { listAssemblies, type AssemblyShown } from '@/lib/installation/reads/assembly/assemblies';
import { coldCaution, cureWords } from '@/lib/installation/rules/assembly/cure';
import { now } from '@/lib/platform/clock';
import { degreesWords } from '@/lib/studio/rules/kilns/degrees';
import css from '../commissions.module.css';

/** Whether the pieces are set on their board, and until when nothing may stand or hang. */
export async function AssemblyLines({ sheet, actor }: Readonly<{ sheet: Sheet; actor: Actor }>) {
  const told = await listAssemblies(actor, sheet.id);
  const isOver = sheet.handOver !== null || sheet.ending !== null;
  const mayWrite = !isOver && isAllowed(actor.roles, 'installation.do');
  if (told.assemblies.length === 0 && !mayWrite) return null;
  return (
    <Section
      title="On its board"
      id="assembly"
      act={
        mayWrite ? (
          <ButtonLink href={`/commissions/${sheet.number}/assembly`} variant="quiet">
            {told.assemblies.length === 0 ? 'Set on the board' : 'Set again'}
          </ButtonLink>
        ) : null
      }
    >
      {told.assemblies.length === 0 ? (
        <p className={css['quiet']}>It was not set on a board yet.</p>
      ) : null}
      <AssembliesSet sheet={sheet} told={told} at={now()} />
    </Section>
  );
}

type AssembliesSetProps = Readonly<{
  sheet: Sheet;
  told: Awaited<ReturnType<typeof listAssemblies>>;
  at: Date;
}>;

/** When pieces were set, the newest first, and the hangings that come too soon for it. */
export function AssembliesSet({ sheet, told, at }: AssembliesSetProps) {
  const { assemblies, tooSoon } = told;
  const zone = sheet.gallery.timeZone;
  const [newest] = assemblies;
  return (
    <>
      {newest && tooSoon.length > 0 ? (
        <Notice kind="caution" title="A hanging comes before it has cured">
          {cureWords(newest, at, zone)}.{' '}
          {tooSoon.map(({ id, startsAt }) => (
            <Link key={id} href={`/diary/${id}`}>
              Move the hanging of <InstantText at={startsAt} zone={zone} />
            </Link>
          ))}
        </Notice>
      ) : null}
      <ul className={css['lines']}>
        {assemblies.map((each, place) => (
          <OneAssembly key={each.id} each={each} isNewest={place === 0} at={at} sheet={sheet} />
        ))}
      </ul>
    </>
  );
}

type OneAssemblyProps = Readonly<{
  each: AssemblyShown;
  isNewest: boolean;
  at: Date;
  sheet: Sheet;
}>;

function OneAssembly({ each, isNewest, at, sheet }: OneAssemblyProps) {
  const { timeZone: zone, lengthUnit } = sheet.gallery;
  const { board, adhesive, lot, finishedAt, roomC, scrapKept, note, by } = each;
  const cold = isNewest ? coldCaution(roomC) : null;
  const room =
    roomC === null ? '' : ` in a room of ${degreesWords(roomC, lengthUnit === 'in' ? 'F' : 'C')}`;
  return (
    <li data-off={isNewest ? undefined : true}>
      {isNewest ? <strong>{cureWords(each, at, zone)}. </strong> : 'Before that: '}
      On {board}, with {adhesive}
      {lot ? `, lot ${lot}` : ''}; the last piece set <InstantText at={finishedAt} zone={zone} />
      {room}. {scrapKept ? 'A scrap is kept.' : 'No scrap was kept.'} {note ? `${note}. ` : ''}
      Noted by {by}.{cold ? <span className={css['quiet']}> {cold}</span> : null}
    </li>
  );
}
