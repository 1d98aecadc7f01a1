import { ButtonLink } from '@/app/ui/button/button';
import { isAllowed, permissions, roleWords, type Role } from '@/lib/access/rules';
import type { ShownWhole } from '@/lib/commissions/reads/colours/shown';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { Act } from '@/lib/commissions/rules/acts';
import { holdsUpWords } from '@/lib/commissions/rules/course/sentences';
import type { WhereKey } from '@/lib/commissions/rules/course/where';
import type { InDiary } from '@/lib/installation/reads';
import css from '../commissions.module.css';

type NextStepProps = Readonly<{
  sheet: Sheet;
  shown: readonly ShownWhole[];
  days: readonly InDiary[];
  roles: readonly Role[];
}>;

/** The next step as one sentence, with its button for whoever can do it. */
export function NextStep({ sheet, shown, days, roles }: NextStepProps) {
  const { standing, sentence, next } = sheet;
  const { permission } = standing;
  const holdsUp = holdsUpWords[standing.where.key];
  const may = permission !== null && isAllowed(roles, permission);
  return (
    <section
      className={css['next']}
      data-waits-on={standing.waitsOn}
      aria-label="What is next"
      id="next"
    >
      <div>
        <p className={css['next-sentence']}>{sentence}</p>
        {holdsUp ? <p className={css['quiet']}>It holds up {holdsUp}.</p> : null}
      </div>
      {next !== null && may ? (
        <ButtonLink href={nextHref(sheet, shown, days)} size="counter">
          {next}
        </ButtonLink>
      ) : null}
      {permission !== null && !may ? (
        <p className={css['quiet']}>{whoCan(permissions[permission].roles)}</p>
      ) : null}
    </section>
  );
}

function whoCan(roles: readonly Role[]): string {
  const names = roles.map((role) => roleWords[role].name);
  return `Next for: ${names.join(' or ')}.`;
}

function nextHref(sheet: Sheet, shown: readonly ShownWhole[], days: readonly InDiary[]): string {
  const { where } = sheet.standing;
  const here = `/commissions/${sheet.number}`;
  const elsewhere = hrefElsewhere(sheet, shown, days);
  if (elsewhere !== null) return elsewhere;
  const act = nextActs[where.key];
  if (act !== 'yes') return `${here}/${act ?? ''}`;
  const what = where.key === 'sketch_shown' ? 'sketch' : 'colour_tile';
  const open = shown.findLast((each) => each.what === what && each.yes === null);
  return open ? `${here}/yes/${open.id}` : here;
}

/** Where the next thing is done on a page that is not an act of the sheet; null for the others. */
function hrefElsewhere(
  sheet: Sheet,
  shown: readonly ShownWhole[],
  days: readonly InDiary[],
): string | null {
  const { where } = sheet.standing;
  const here = `/commissions/${sheet.number}`;
  if (where.key === 'clay_to_begin' || where.key === 'in_the_studio') {
    return `/studio/${where.jobNumber}`;
  }
  if (where.key === 'hanging_booked') {
    const day = days.findLast((each) => each.calledOffWhy === null && each.kind === where.kind);
    return day ? `/diary/${day.id}` : '/diary';
  }
  if (where.key === 'wall_to_look_at') return `${here}/wall`;
  if (where.key === 'hanging_to_book') return `/diary/book?commission=${sheet.number}`;
  if (where.key === 'to_propose' || where.key === 'proposal_ran_out') return `${here}/proposal/new`;
  if (where.key === 'twin_to_give') {
    const tile = shown.find((each) => each.what === 'colour_tile' && each.label === where.number);
    return tile ? `${here}/tile/${tile.id}` : here;
  }
  return null;
}

const nextActs: Partial<Record<WhereKey, Act>> = {
  proposal_to_send: 'proposal',
  proposal_out: 'proposal',
  to_sign: 'agreement',
  to_agree: 'agreement',
  sketch_to_show: 'sketch',
  sketch_shown: 'yes',
  colours_to_show: 'colours',
  colours_shown: 'yes',
  deposit_to_ask: 'ask',
  deposit_asked: 'payment',
  rest_owed: 'payment',
  job_to_open: 'job',
  to_hand_over: 'hand-over',
};
