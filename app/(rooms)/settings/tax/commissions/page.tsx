import type { Metadata } from 'next';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listTaxRules } from '@/lib/commissions/reads/agreement/tax-rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { AdviserSays } from '../adviser-says';
import { RuleForm, RuleList } from './rules';

export const metadata: Metadata = { title: 'Tax of commissions' };

/** What each state says about a piece that is hung, a fixture, and pieces set into a wall. */
export default async function CommissionTaxRules() {
  const actor = await requireActor('tax.see');
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const states = await listTaxRules(actor);
  const mayKeep = isAllowed(actor.roles, 'settings.keep');
  const list =
    states.length === 0 ? (
      <Empty title="No state is kept yet">
        A state comes here with the first place that is kept in it under Sales tax.
      </Empty>
    ) : (
      states.map(({ state, rules }) => (
        <Section key={state} title={state}>
          <RuleList rules={rules} today={today} />
        </Section>
      ))
    );
  return (
    <>
      <PageHead
        title="Tax of commissions"
        lead="What becomes part of a building is not taxed everywhere like a piece that is sold. Where no rule is kept, it is taxed."
        back={{ href: '/settings/tax', name: 'Sales tax' }}
      />
      <InThisRoom room="settings" here="tax" roles={actor.roles} />
      {mayKeep && states.length > 0 ? (
        <Columns
          wide={<div>{list}</div>}
          beside={
            <Section
              title="From a day on"
              lead="What was kept before ends the day before. What was handed over keeps its tax."
            >
              <RuleForm states={states.map(({ state }) => state)} today={today} />
            </Section>
          }
        />
      ) : (
        list
      )}
      <AdviserSays />
    </>
  );
}
