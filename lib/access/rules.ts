import { ok, refuse, type Result } from '@/lib/platform/result';

/** What someone is here. One person may be several of these. */
export type Role = 'owner' | 'gallery' | 'maker' | 'books';

/** The roles in the order in which people name them. */
export const roles = ['owner', 'gallery', 'maker', 'books'] as const satisfies readonly Role[];

/** Each role in words: what the person is called, and what they do here. */
export const roleWords: Readonly<Record<Role, { name: string; does: string }>> = {
  owner: { name: 'Owner', does: 'sees and does everything, and keeps the list of who works here' },
  gallery: {
    name: 'Gallery',
    does: 'sells, keeps the stock, takes requests and money, books days',
  },
  maker: { name: 'Maker', does: 'takes requests, shows sketches, moves pieces through the studio' },
  books: { name: 'Books', does: 'reads the month, the journal, the tax and the receipts' },
};

type Right = Readonly<{ roles: readonly Role[]; words: string }>;

const everyone = roles;
const gallery = ['owner', 'gallery'] as const;
const making = ['owner', 'gallery', 'maker'] as const;
const reckoning = ['owner', 'books'] as const;
const ownerAlone = ['owner'] as const;

/** Who may do what: the one table that every page, action and write asks. */
export const permissions = {
  'counter.sell': { roles: gallery, words: 'sell at the counter' },
  'counter.discount_beyond': {
    roles: ownerAlone,
    words: 'take off more than staff may by themselves',
  },
  'counter.return_beyond': {
    roles: ownerAlone,
    words: 'take back what is late or was sold for good',
  },
  'counter.give_back': { roles: gallery, words: 'take pieces back and give money back' },
  'counter.close_day': { roles: gallery, words: 'count the drawer and close the day' },
  'receipts.see': { roles: ['owner', 'gallery', 'books'], words: 'look at receipts' },
  'stock.see': { roles: everyone, words: 'see what is here and where it stands' },
  'stock.load': { roles: gallery, words: 'bring in a stock list and correct what is on hand' },
  'stock.move': { roles: making, words: 'move pieces from place to place and count them' },
  'stock.hold': { roles: gallery, words: 'hold pieces, lay them away, and give them on approval' },
  'stock.value': { roles: reckoning, words: 'see what the stock cost and is worth' },
  'catalogue.keep': { roles: gallery, words: 'write down designs, sets, seconds and moulds' },
  'catalogue.price': { roles: ownerAlone, words: 'set prices and the days from which they hold' },
  'orders.take': { roles: gallery, words: 'take special orders' },
  'orders.see': { roles: making, words: 'see what was promised and when' },
  'outside.keep': {
    roles: gallery,
    words: 'take pieces to fairs, shops and other galleries, and note what they sold',
  },
  'data.take_out': {
    roles: ['owner', 'books'],
    words: 'take stock, people and sales out as files',
  },
  'data.bring_in': { roles: ownerAlone, words: 'bring people and sales in from files' },
  'trade.keep': {
    roles: ownerAlone,
    words: 'set what a designer gets, and pay referral fees',
  },
  'tax.see': { roles: ['owner', 'gallery', 'books'], words: 'look at tax places and certificates' },
  'collectors.see': { roles: everyone, words: 'look up collectors' },
  'collectors.write': { roles: gallery, words: 'write down a collector, or change what is known' },
  'collectors.merge': { roles: gallery, words: 'find two collectors to be one' },
  'collectors.erase': {
    roles: ownerAlone,
    words: 'hand out or strike out what is known of a collector',
  },
  'commissions.see': { roles: everyone, words: 'look at commissions' },
  'commissions.see_money': {
    roles: ['owner', 'gallery', 'books'],
    words: 'see what a commission costs and what was paid',
  },
  'commissions.propose': {
    roles: ownerAlone,
    words: 'price a proposal, see how it was built up, and send it',
  },
  'commissions.give_back': { roles: ownerAlone, words: 'give back what a collector paid' },
  'commissions.write': { roles: making, words: 'log a request, show sketches, note a yes' },
  'commissions.agree': { roles: ownerAlone, words: 'agree on a price and a day' },
  'commissions.take_money': { roles: gallery, words: 'ask for a deposit and take it' },
  'commissions.hand_over': { roles: ownerAlone, words: 'hand a commission over' },
  'commissions.override_start': {
    roles: ownerAlone,
    words: 'let the making begin before everything is there',
  },
  'commissions.end': { roles: ownerAlone, words: 'end a commission early' },
  'studio.see': { roles: making, words: 'see what stands at which step in the studio' },
  'studio.move': { roles: ['owner', 'maker'], words: 'move pieces on to the next step' },
  'studio.keep': {
    roles: ['owner', 'maker'],
    words: 'keep the routes, the kilns, the glaze book and the numbered drawings',
  },
  'diary.see': { roles: making, words: 'look at the diary' },
  'diary.book': { roles: making, words: 'book, move and call off days' },
  'diary.before_paid': { roles: ownerAlone, words: 'book a day before the balance is in' },
  'installation.do': {
    roles: making,
    words: 'look at walls, plan how a piece hangs, and tick off the day',
  },
  'sending.do': { roles: making, words: 'pack, send and claim' },
  'month.see': { roles: reckoning, words: 'look at the month by design' },
  'books.see': { roles: reckoning, words: 'read the journal, the deposits and the tax' },
  'staff.keep': { roles: ownerAlone, words: 'keep the list of who works here' },
  'settings.keep': { roles: ownerAlone, words: 'change how the gallery works, and its tax rates' },
  'workings.see': { roles: everyone, words: 'look up how a figure is worked out' },
  'files.see': { roles: everyone, words: 'look at pictures' },
  'self.keep': { roles: everyone, words: 'change their own password and sign out everywhere' },
} as const satisfies Record<string, Right>;

/** Something that one may or may not do here. */
export type Permission = keyof typeof permissions;

/** Whoever acts. */
export type Actor = Readonly<{ id: string; name: string; roles: readonly Role[] }>;

/** Whoever acts, and the instant at which they do. */
export type Doer = Readonly<{ actor: Actor; at: Date }>;

/**
 * A collector who does something on their own page: by which link, for which commission and under
 * which name, and the instant. They hold no role: what they may do is written at the command.
 */
export type PageDoer = Readonly<{
  page: Readonly<{ linkId: string; commissionId: string; name: string }>;
  at: Date;
}>;

/** Someone who works here, or a collector on their own page. */
export type AnyDoer = Doer | PageDoer;

/** Whether it is a collector on their own page. */
export function isAtPage(doer: AnyDoer): doer is PageDoer {
  return 'page' in doer;
}

/** The one who works here; null for a collector on their own page. */
export function staffIdOf(doer: AnyDoer): string | null {
  return isAtPage(doer) ? null : doer.actor.id;
}

/** Why something was not done: the person's roles do not allow it. */
export type NotAllowed = { code: 'not_allowed'; permission: Permission };

/**
 * Whether someone may do something: true as soon as one of their roles allows it.
 *
 * @returns refuses `not_allowed` with the permission that is missing
 * @example allow(maker, 'counter.sell') // refused
 */
export function allow(actor: Actor, permission: Permission): Result<true, NotAllowed> {
  return isAllowed(actor.roles, permission)
    ? ok(true)
    : refuse({ code: 'not_allowed', permission });
}

/** Whether these roles together allow something; nobody without a role is allowed anything. */
export function isAllowed(held: readonly Role[], permission: Permission): boolean {
  const right: Right = permissions[permission];
  return held.some((role) => right.roles.includes(role));
}

/** Says in a full sentence what the person's roles do not allow. */
export function notAllowedMessage(refusal: NotAllowed): string {
  const who = permissions[refusal.permission].roles.map((role) => roleWords[role].name);
  return `Your part here does not let you ${permissions[refusal.permission].words}. ${list(who)} can.`;
}

/** A room of the house, as the rail names it. */
export type RoomDoor = Readonly<{ href: string; name: string }>;

const doors: readonly (RoomDoor & { permission: Permission; atEnd?: true })[] = [
  { href: '/', name: 'Today', permission: 'workings.see' },
  { href: '/counter', name: 'Counter', permission: 'counter.sell' },
  { href: '/stock', name: 'Stock', permission: 'stock.see' },
  { href: '/commissions', name: 'Commissions', permission: 'commissions.see' },
  { href: '/studio', name: 'Studio', permission: 'studio.see' },
  { href: '/diary', name: 'Diary', permission: 'diary.see' },
  { href: '/collectors', name: 'Collectors', permission: 'collectors.see' },
  { href: '/month', name: 'Month', permission: 'month.see' },
  { href: '/books', name: 'Books', permission: 'books.see' },
  { href: '/workings', name: 'Workings', permission: 'workings.see', atEnd: true },
  { href: '/staff', name: 'Staff', permission: 'staff.keep', atEnd: true },
];

/** The rooms that hang from the rail for these roles, in the rail's order. */
export function roomsFor(held: readonly Role[]): readonly RoomDoor[] {
  return doorsFor(held, false);
}

/** The rooms at the rail's end for these roles: the workings, and for the owner the staff. */
export function endRoomsFor(held: readonly Role[]): readonly RoomDoor[] {
  return doorsFor(held, true);
}

function doorsFor(held: readonly Role[], atEnd: boolean): readonly RoomDoor[] {
  return doors
    .filter((door) => (door.atEnd ?? false) === atEnd && isAllowed(held, door.permission))
    .map(({ href, name }) => ({ href, name }));
}

function list(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}
