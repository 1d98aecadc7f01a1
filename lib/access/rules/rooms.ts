import { isAllowed, type Permission, type Role } from '../rules';

/** A page of a room, as the row under its head names it. */
export type PageOfRoom = Readonly<{ key: string; href: string; name: string }>;

type Page = PageOfRoom & { permission: Permission };

const pages = {
  counter: [
    { key: 'slip', href: '/counter', name: 'The slip', permission: 'counter.sell' },
    { key: 'aside', href: '/counter/aside', name: 'Set aside', permission: 'counter.sell' },
    { key: 'receipts', href: '/receipts', name: 'Receipts', permission: 'receipts.see' },
    { key: 'holds', href: '/holds', name: 'Holds', permission: 'stock.hold' },
    { key: 'layaways', href: '/layaways', name: 'Layaways', permission: 'stock.hold' },
    { key: 'approvals', href: '/on-approval', name: 'On approval', permission: 'stock.hold' },
    { key: 'orders', href: '/orders', name: 'Special orders', permission: 'orders.see' },
    { key: 'vouchers', href: '/vouchers', name: 'Vouchers', permission: 'counter.sell' },
    { key: 'drawer', href: '/drawer', name: 'Day’s end', permission: 'counter.close_day' },
  ],
  stock: [
    { key: 'pieces', href: '/stock', name: 'Pieces', permission: 'stock.see' },
    { key: 'places', href: '/stock/places', name: 'Places and moves', permission: 'stock.move' },
    { key: 'counts', href: '/stock/counts', name: 'Counts', permission: 'stock.move' },
    { key: 'next', href: '/stock/make-next', name: 'What to make next', permission: 'stock.see' },
    { key: 'labels', href: '/stock/labels', name: 'Labels', permission: 'stock.see' },
    { key: 'prices', href: '/prices', name: 'Prices and tags', permission: 'stock.see' },
    { key: 'sets', href: '/sets', name: 'Sets', permission: 'stock.see' },
    { key: 'moulds', href: '/moulds', name: 'Moulds and editions', permission: 'stock.see' },
    { key: 'fairs', href: '/fairs', name: 'Fairs', permission: 'outside.keep' },
    { key: 'galleries', href: '/galleries', name: 'Other galleries', permission: 'outside.keep' },
    { key: 'shops', href: '/shops', name: 'Shops', permission: 'outside.keep' },
    { key: 'worth', href: '/stock/value', name: 'What it is worth', permission: 'stock.value' },
    { key: 'files', href: '/data', name: 'Files in and out', permission: 'stock.see' },
  ],
  studio: [
    { key: 'bench', href: '/studio', name: 'The bench', permission: 'studio.see' },
    { key: 'kilns', href: '/studio/kilns', name: 'Kilns', permission: 'studio.see' },
    { key: 'days', href: '/studio/days', name: 'Days', permission: 'studio.see' },
    { key: 'losses', href: '/studio/losses', name: 'Losses', permission: 'studio.see' },
    { key: 'glazes', href: '/studio/glazes', name: 'Glaze book', permission: 'studio.see' },
    { key: 'template', href: '/studio/template', name: 'Paper template', permission: 'studio.see' },
    { key: 'routes', href: '/studio/routes', name: 'Routes', permission: 'studio.see' },
    { key: 'ways', href: '/studio/ways', name: 'Ways of the studio', permission: 'studio.keep' },
    { key: 'costs', href: '/studio/costs', name: 'What a piece costs', permission: 'stock.value' },
  ],
  diary: [
    { key: 'days', href: '/diary', name: 'The diary', permission: 'diary.see' },
    { key: 'crew', href: '/diary/crew', name: 'Who works when', permission: 'diary.see' },
    { key: 'care', href: '/diary/after-care', name: 'Looking after', permission: 'diary.see' },
    { key: 'calendar', href: '/diary/calendar', name: 'On your phone', permission: 'diary.see' },
    { key: 'sending', href: '/sending', name: 'Sending', permission: 'sending.do' },
    {
      key: 'tiles',
      href: '/tiles-on-wall',
      name: 'Tiles on a wall',
      permission: 'installation.do',
    },
  ],
  settings: [
    { key: 'gallery', href: '/settings', name: 'The gallery', permission: 'settings.keep' },
    {
      key: 'counter',
      href: '/settings/counter',
      name: 'At the counter',
      permission: 'settings.keep',
    },
    {
      key: 'commissions',
      href: '/settings/commissions',
      name: 'Commissions',
      permission: 'settings.keep',
    },
    { key: 'hanging', href: '/settings/hanging', name: 'Hanging', permission: 'settings.keep' },
    { key: 'carriers', href: '/settings/carriers', name: 'Carriers', permission: 'settings.keep' },
    { key: 'clay', href: '/settings/clay', name: 'Clay bodies', permission: 'catalogue.keep' },
    {
      key: 'glazes',
      href: '/settings/glazes',
      name: 'Buckets of glaze',
      permission: 'commissions.write',
    },
    { key: 'tax', href: '/settings/tax', name: 'Sales tax', permission: 'tax.see' },
    { key: 'states', href: '/settings/tax/states', name: 'Other states', permission: 'tax.see' },
  ],
} as const satisfies Record<string, readonly Page[]>;

/** A room that has several pages. */
export type RoomWithPages = keyof typeof pages;

/** The pages of a room that these roles may open, in their order. */
export function pagesOf(room: RoomWithPages, held: readonly Role[]): readonly PageOfRoom[] {
  return pages[room]
    .filter((page) => isAllowed(held, page.permission))
    .map(({ key, href, name }) => ({ key, href, name }));
}

const roomAt: Readonly<Record<string, RoomWithPages>> = {
  '/counter': 'counter',
  '/stock': 'stock',
  '/studio': 'studio',
  '/diary': 'diary',
};

/**
 * The addresses that belong to a room without standing under its own, so that the rail can say
 * where one is.
 *
 * @example addressesOf('/counter') // '/receipts', '/holds', … and '/promises'
 */
export function addressesOf(roomHref: string): readonly string[] {
  const room = roomAt[roomHref];
  if (room === undefined) return [];
  const apart = pages[room].map((page) => page.href).filter((href) => !href.startsWith(roomHref));
  return room === 'counter' ? [...apart, '/promises'] : apart;
}
