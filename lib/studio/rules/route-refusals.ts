import type { AnyRefusal } from './refusals';
import { notAllowedMessage } from '@/lib/access/rules';

/** Why a route or a bench was not kept. */
export type RouteRefusal =
  | AnyRefusal
  | { code: 'no_such_route' }
  | { code: 'route_was_put_away' }
  | { code: 'name_taken'; name: string }
  | { code: 'no_such_bench' }
  | { code: 'bench_is_used'; by: string }
  | { code: 'one_stays_usual' };

/** Says why a route or a bench was not kept. */
export function routeRefusalMessage(refusal: RouteRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'no_such_route':
      return 'That route is not in the list.';
    case 'route_was_put_away':
      return 'That route was put away. Write a new one.';
    case 'name_taken':
      return `${refusal.name} is there already. Give it another name.`;
    case 'no_such_bench':
      return 'One of the benches is no longer there. Choose again.';
    case 'bench_is_used':
      return `${refusal.by} needs this bench. Change that first.`;
    case 'one_stays_usual':
      return 'One route of each technique is the usual one. Make another one usual first.';
  }
}
