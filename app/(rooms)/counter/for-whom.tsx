import Link from 'next/link';
import { Button } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import type { Actor } from '@/lib/access/rules';
import { findCollectors } from '@/lib/collectors/reads';
import { certificateWords } from '@/lib/collectors/rules/trade';
import type { SlipShown } from '@/lib/counter/reads';
import { counterHref } from './address';
import { ChangeForm } from './change-form';
import css from './counter.module.css';

const shownMost = 8;

type ForWhomProps = Readonly<{ actor: Actor; shown: SlipShown; who: string | null }>;

/** Whose name goes on the receipt, if anyone's: found by letters, taken off by a touch. */
export function ForWhom({ actor, shown, who }: ForWhomProps) {
  const { collector, slip } = shown;
  if (collector) {
    return (
      <div className={css['who']}>
        <ChangeForm slip={slip} does="name" label="Whose name is on it" layout="row">
          <p className={css['for-whom']}>
            <span>
              For <strong>{collector.name}</strong>
            </span>
            <Button type="submit" name="collectorId" value="" variant="quiet" size="counter">
              Take the name off
            </Button>
          </p>
        </ChangeForm>
        <Trade shown={shown} />
      </div>
    );
  }
  if (who === null) {
    return (
      <p className={css['for-whom']}>
        <span className={css['quiet']}>Nobody’s name is on it.</span>
        <Link href={counterHref(slip.id, { who: '' })} prefetch={false} scroll={false}>
          Put a name on it
        </Link>
      </p>
    );
  }
  return <FindWhom actor={actor} shown={shown} who={who} />;
}

async function FindWhom({ actor, shown, who }: ForWhomProps & { who: string }) {
  const found = (await findCollectors(actor, who)).slice(0, shownMost);
  return (
    <div className={css['who']}>
      <form action="/counter" role="search" className={css['find']}>
        <input type="hidden" name="slip" value={shown.slip.id} />
        <Field name="who" label="Whose name?" kind="search" size="counter" defaultValue={who} />
        <Button type="submit" variant="quiet" size="counter">
          Look
        </Button>
      </form>
      <ChangeForm slip={shown.slip} does="name" label="Collectors">
        <ul className={css['results']} aria-label="Collectors">
          {found.map((each) => (
            <li key={each.id}>
              <button type="submit" name="collectorId" value={each.id} className={css['name']}>
                <strong>{each.name}</strong>
                <span className={css['quiet']}>{each.city ?? each.email ?? ''}</span>
              </button>
            </li>
          ))}
        </ul>
        {found.length === 0 ? <p className={css['quiet']}>Nobody is called that.</p> : null}
      </ChangeForm>
    </div>
  );
}

/** What a designer gets, and whether their certificate holds where it goes. */
function Trade({ shown }: Readonly<{ shown: SlipShown }>) {
  const { terms } = shown.facts;
  const { atTradePrice } = shown.slip.content;
  return (
    <>
      <Certificate shown={shown} />
      {terms?.way === 'discount' || atTradePrice ? (
        <div className={css['for-whom']}>
          <span>
            {atTradePrice
              ? `At the trade price, ${terms?.percent ?? ''} in 100 less`
              : 'At the full price'}
          </span>
          <ChangeForm slip={shown.slip} does="trade" label="Trade price">
            <SubmitButton
              {...{ name: 'atTradePrice', value: atTradePrice ? 'no' : 'yes' }}
              {...{ variant: 'quiet', size: 'counter' }}
            >
              {atTradePrice ? 'Full price' : 'Trade price'}
            </SubmitButton>
          </ChangeForm>
        </div>
      ) : null}
    </>
  );
}

function Certificate({ shown }: Readonly<{ shown: SlipShown }>) {
  const { certificate } = shown.facts;
  const { forResale } = shown.slip.content;
  if (certificate.kind === 'none') return null;
  const isGood = certificate.kind === 'good';
  return (
    <div className={css['for-whom']}>
      <span className={css[isGood ? 'holds' : 'holds-not']}>
        Resale certificate: {certificateWords(certificate)}
      </span>
      {isGood || forResale ? (
        <ChangeForm slip={shown.slip} does="resale" label="For resale">
          <SubmitButton
            {...{ name: 'forResale', value: forResale ? 'no' : 'yes' }}
            {...{ variant: 'quiet', size: 'counter' }}
          >
            {forResale ? 'Charge the tax after all' : 'For resale, without tax'}
          </SubmitButton>
        </ChangeForm>
      ) : null}
    </div>
  );
}
