import type { AppointmentKind } from '@/lib/installation/rules';

/** What to mind at each kind of appointment; common practice of those who hang and carry. */
export const cautionFor: Readonly<Record<AppointmentKind, string>> = {
  hanging:
    'Two people from about 50 lb, more with a lift. Know what is in the wall before a drill goes ' +
    'in: wires, pipes, gas. Never on gypsum board alone when it is heavy; structure and anchors ' +
    'are a licensed contractor’s under the local code.',
  delivery:
    'Two people from about 50 lb. Count the boxes, open within a day, and take pictures before ' +
    'anything is thrown away: a claim has days, not weeks.',
  site_visit:
    'Ask what the wall is made of and prove it. Where nobody knows, stop and find out before ' +
    'anything is promised.',
  fetching:
    'Two people from about 50 lb, and a vehicle that is padded and high enough. Pack so that ' +
    'nothing moves, and show how it is lifted.',
  after_care:
    'Nobody leans on the piece. Something loose is made safe and photographed before anything is ' +
    'touched; fixings in a wall are looked at by whoever is qualified for them.',
};
