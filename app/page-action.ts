import 'server-only';
import { z } from 'zod';
import { fieldWords } from '@/app/form-words';
import type { FormAction, FormState } from '@/app/ui/form-state';
import { doorAction, refused } from '@/app/form-action';
import type { PageDoer } from '@/lib/access/rules';
import { doerOf, openLink, type OpenLink } from '@/lib/commissions/reads/page/open-link';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';

/** What a collector sent: the doer, what the form says, and the page that their address opened. */
export type OnTheirPage = { doer: PageDoer; link: OpenLink; token: string };

/**
 * Makes a server action for a collector's own page: the form carries the secret of its address,
 * which is opened anew each time; which commission it is about comes from the address alone.
 *
 * With an address that opens nothing, nothing is written and what was typed is kept. The form is
 * read only after the address has opened.
 */
export function pageAction<Schema extends z.ZodType>(
  schema: Schema,
  act: (there: OnTheirPage, input: z.output<Schema>) => Promise<FormState>,
): FormAction {
  return doorAction(z.looseObject({ token: z.string() }), async (at, { token, ...fields }) => {
    const link = await openLink(token, at);
    if (!link) return refused(commissionRefusalMessage({ code: 'link_shut' }));
    const { commissionId } = link;
    const read = schema.safeParse({ ...fields, commissionId }, { error: fieldWords });
    if (!read.success) return refused(faultsOf(read.error));
    return act({ doer: doerOf(link, at), link, token }, read.data);
  });
}

function faultsOf(error: z.ZodError) {
  const fields: Record<string, string> = {};
  for (const { path, message } of error.issues) fields[path.join('.')] ??= message;
  const unseen = fields[''] ?? fields['requestKey'];
  return { message: unseen ?? 'Not yet: please look again at what is marked below.', fields };
}
