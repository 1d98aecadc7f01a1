import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Columns } from '@/app/ui/page/section';
import type { PlanShown } from '@/lib/installation/reads/plan/told';
import type { WorkOrder } from '@/lib/installation/reads/work/order';
import { loadFor, toolsFor } from '@/lib/installation/rules/work/load';
import { theWall, wayIn, weightSaid, whoGoes } from '@/lib/installation/rules/work/order-words';
import { handsWords } from '@/lib/installation/rules/work/hands';
import type { Gallery } from '@/lib/platform/settings';
import { ForWhom } from '../../for-whom';
import css from './work.module.css';

type OrderFactsProps = Readonly<{
  order: WorkOrder;
  gallery: Gallery;
  /** How it hangs: who lifts it is told by it; null without one. */
  plan: PlanShown | null;
}>;

/** Everything that whoever goes along has to know, in the order in which it is needed. */
export function OrderFacts({ order, gallery, plan }: OrderFactsProps) {
  const { survey, facts, fallBack } = order;
  const unit = gallery.lengthUnit;
  return (
    <Columns
      wide={
        <>
          <Facts
            facts={[
              { name: 'Where', value: order.address },
              { name: 'Who goes', value: whoGoes(order) },
              { name: 'For', value: <ForWhom commission={order.commission} phone={order.phone} /> },
              { name: 'Who lets us in', value: orNull(order.meets), notKnown: 'not noted yet' },
              {
                name: 'The way in',
                value: orNull(wayIn(survey, unit)),
                notKnown: 'not looked at yet',
              },
              { name: 'People and animals', value: orNull(survey?.people), notKnown: 'not noted' },
              { name: 'The building', value: orNull(survey?.building), notKnown: 'nothing noted' },
              {
                name: 'They have ready',
                value: orNull(order.prepares),
                notKnown: 'nothing was asked',
              },
              { name: 'What to know', value: orNull(order.note), notKnown: 'nothing noted' },
            ]}
          />
          {survey?.services ? <Caution>In the wall: {survey.services}</Caution> : null}
        </>
      }
      beside={
        <>
          <Facts
            facts={[
              { name: 'Weight', value: weightSaid(order.weight, unit), notKnown: 'not known' },
              {
                name: 'Hands',
                value: order.commission ? handsOf(plan, facts.weightG) : null,
              },
              { name: 'The wall', value: orNull(theWall(order)), notKnown: 'not known yet: stop' },
              { name: 'If weather or road forbid it', value: orNull(fallBack), notKnown: 'call' },
              { name: 'The gallery', value: orNull(gallery.phone) },
            ].filter(({ name, value }) => name !== 'Hands' || value !== null)}
          />
          <h2 className={css['small-head']}>In the van</h2>
          <p>{loadFor(facts).join(', ')}.</p>
          <h2 className={css['small-head']}>Tools</h2>
          <p>{toolsFor(facts).join(', ')}.</p>
        </>
      }
    />
  );
}

function handsOf(plan: PlanShown | null, weightG: number | null): string {
  return plan?.hands?.words[0] ?? handsWords(weightG);
}

function orNull(words: string | null | undefined): string | null {
  return words === undefined || words === null || words.trim() === '' ? null : words;
}
