/**
 * What each part of the file is that a person gets of themselves. The words stand in the file too,
 * so that whoever reads it needs nothing else.
 */
export const keptParts = {
  entries:
    'Your entries in the address book: name, firm, how to reach you, what was to be remembered.',
  people: 'Who belongs to your household or firm.',
  addresses: 'Your further addresses.',
  consents:
    'What you said yes or no to, when, and how it was said. The last one of each kind holds.',
  notes: 'Notes on you.',
  owned: 'Pieces of yours, and where they hang.',
  tradeTerms: 'What you get as one of the trade.',
  certificates: 'Your resale certificates.',
  merges: 'When two entries were found to be one, and set apart again.',
  history: 'What was done to your entries in the address book, and when.',
  sales:
    'What you bought, how it was paid, what was sent, and what came back. No number of a card is kept.',
  referredSales: 'Sales to buyers whom you brought.',
  referralFees: 'Fees for buyers whom you brought.',
  credits: 'Vouchers and store credits in your name, and what went on and off them.',
  slips: 'Slips at the counter in your name that were not sold.',
  postings: 'Lines of the books about what you owe or are owed. Above zero is a debit.',
  commissions:
    'Your commissions: what you wished, proposals, agreements and changes word for word, signatures, sketches and colours shown, payments, letters, days, hand-over.',
  brought: 'Commissions of others whom you brought.',
  holds: 'Pieces held for you.',
  waiting: 'Pieces that you waited for.',
  onApproval: 'Pieces that you took home to try.',
  shipments: 'What was sent to you: where to, what became of it, how it looked, what was claimed.',
  layaways: 'Pieces laid away for you.',
  specialOrders: 'Special orders.',
  wholesaleOrders: 'Orders for your shop.',
  townPromises: 'Towns in which only your shop gets our pieces.',
  otherGallery: 'What was agreed with you as another gallery.',
} as const;

/** The name of a part of the file. */
export type KeptPart = keyof typeof keptParts;

const howToRead =
  'Names that end in Cents are money in whole cents, written as text. Names that end in On are days; names that end in At, and “at”, are moments in UTC. Pictures are kept under their fileId; ask the gallery for them.';

/**
 * The file that a person gets of themselves, as JSON.
 *
 * @param kept each part by its name, as {@link keptParts} explains it
 * @example cents are text: { "totalCents": "10800" }; days are days: { "soldOn": "2026-11-20" }
 */
export function keptFile(
  kept: Readonly<Record<KeptPart, unknown>>,
  about: { gallery: string; at: Date },
): string {
  const parts = Object.keys(keptParts).map((part): [string, unknown] => [
    part,
    kept[part as KeptPart],
  ]);
  const file = {
    file: 'Everything kept of one person',
    gallery: about.gallery,
    writtenAt: about.at,
    howToRead,
    parts: keptParts,
    ...Object.fromEntries(parts),
  };
  return `${JSON.stringify(file, plain, 2)}\n`;
}

function plain(key: string, value: unknown): unknown {
  if (typeof value === 'bigint') return value.toString();
  const isDay =
    typeof value === 'string' && /(^on|On)$/.test(key) && value.endsWith('T00:00:00.000Z');
  return isDay ? value.slice(0, 10) : value;
}

/**
 * The same file as a page that can be read and printed: a heading for each part, then what is in it.
 *
 * @param json what {@link keptFile} gives
 */
export function keptPage(json: string): string {
  const file = JSON.parse(json) as Record<string, unknown>;
  const body = Object.entries(keptParts).map(([part, words]) => {
    const told = asHtml(file[part]);
    return `<h2>${escaped(words)}</h2>\n${told === '' ? '<p>Nothing.</p>' : told}`;
  });
  const title = `${String(file['file'])}, ${String(file['gallery'])}`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title>
<style>body{font:1rem/1.5 Georgia,serif;max-width:50rem;margin:2rem auto;padding:0 1rem}
dl{margin:0 0 1rem;padding-left:1rem;border-left:2px solid #bbb}dt{font-weight:600}
dd{margin:0 0 .25rem 1rem;white-space:pre-wrap;overflow-wrap:anywhere}h2{font-size:1.2rem}</style></head>
<body><h1>${escaped(title)}</h1>
<p>Written ${escaped(String(file['writtenAt']))}. ${escaped(howToRead)}</p>
${body.join('\n')}
</body></html>
`;
}

function asHtml(value: unknown): string {
  if (value === null || value === '' || value === undefined) return '';
  if (typeof value === 'string') return escaped(value);
  if (Array.isArray(value)) return value.map(asHtml).join('\n');
  if (typeof value !== 'object') return escaped(JSON.stringify(value));
  const facts = Object.entries(value).flatMap(([name, told]) => {
    const words = asHtml(told);
    return words === '' ? [] : [`<dt>${escaped(name)}</dt><dd>${words}</dd>`];
  });
  return facts.length === 0 ? '' : `<dl>${facts.join('')}</dl>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}
