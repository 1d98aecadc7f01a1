import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { type Route } from '@/lib/studio/reads/routes';
import { listBenches, listRoutes } from '@/lib/studio/reads/route-list';
import { likelyDaysOf, techniqueWords } from '@/lib/studio/rules/routes';
import { stepDaysWords } from '@/lib/studio/rules/words';
import css from './routes.module.css';

export const metadata: Metadata = { title: 'Routes' };

/** The ways through the studio, step by step. */
export default async function RoutesPage() {
  const actor = await requireActor('studio.see');
  const [routes, benches] = await Promise.all([listRoutes(actor), listBenches(actor)]);
  const benchName = new Map(benches.map((bench) => [bench.id, bench.name]));
  const mayKeep = isAllowed(actor.roles, 'studio.keep');
  return (
    <>
      <PageHead
        title="Routes"
        lead="The ways from wet clay to a finished piece. A job keeps the route it began with; a change here holds for jobs that are begun later."
      >
        {mayKeep ? <ButtonLink href="/studio/routes/new">Write a route</ButtonLink> : null}
      </PageHead>
      <InThisRoom room="studio" here="routes" roles={actor.roles} />
      {routes.map((route) => (
        <Section
          key={route.id}
          title={route.name}
          lead={leadOf(route)}
          act={mayKeep ? <Link href={`/studio/routes/${route.id}`}>Change it</Link> : null}
        >
          <RouteTable route={route} benchName={benchName} />
        </Section>
      ))}
    </>
  );
}

function leadOf(route: Route): string {
  const days = likelyDaysOf(route.steps);
  const usual = route.isUsual ? `The usual way for ${techniqueWords[route.technique]}` : 'A way';
  return `${usual}: ${days} days if nothing waits for a bench or a kiln.`;
}

type RouteTableProps = Readonly<{ route: Route; benchName: ReadonlyMap<string, string> }>;

function RouteTable({ route, benchName }: RouteTableProps) {
  return (
    <div className={css['scroll']} tabIndex={0} role="region" aria-label={route.name}>
      <table className={css['steps']}>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Held by</th>
            <th scope="col">Days</th>
            <th scope="col" className={css['figure']}>
              Lost of 100
            </th>
            <th scope="col" className={css['figure']}>
              Minutes each
            </th>
          </tr>
        </thead>
        <tbody>
          {route.steps.map((step) => (
            <tr key={step.name}>
              <th scope="row">{step.name}</th>
              <td>{heldBy(step, benchName)}</td>
              <td>{stepDaysWords(step)}</td>
              <td className={css['figure']}>{step.lossPercent === '0' ? '–' : step.lossPercent}</td>
              <td className={css['figure']}>{step.minutesEach === '0' ? '–' : step.minutesEach}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function heldBy(step: Route['steps'][number], benchName: ReadonlyMap<string, string>): string {
  const together = step.isTogether ? ', when all are there' : '';
  switch (step.kind) {
    case 'work':
      return `the ${benchName.get(step.benchId ?? '') ?? 'bench'}${together}`;
    case 'fire':
      return `a kiln, cone ${step.cone}${together}`;
    case 'dry':
      return `the air, by season${together}`;
    case 'wait':
      return `time${together}`;
    case 'collector':
      return `the collector’s answer${together}`;
  }
}
