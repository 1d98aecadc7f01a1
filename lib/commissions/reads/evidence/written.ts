import 'server-only';
import type {
  AgreementShown,
  ChangeOrderShown,
  SignatureShown,
} from '@/lib/commissions/reads/agreement/agreements';
import type { HandOverPaper } from '@/lib/commissions/reads/agreement/hand-over-for';
import { sha256Of } from '@/lib/commissions/reads/content';
import type { ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import { signedPlaceWords } from '@/lib/commissions/rules/agreement/paper';
import { anEntry, type Entry } from '@/lib/commissions/rules/evidence/chapters';
import { formatDay, formatInstant } from '@/lib/dates/rules';

/** How a name was given, as it is told. */
const kindWords = {
  typed: 'typed as a signature',
  drawn: 'drawn on the screen',
  on_paper: 'on paper, which the gallery keeps',
} as const;

/** The name under something, in one sentence. */
export function signedLine(signature: SignatureShown | null, zone: string): string[] {
  if (!signature) return [];
  const { name, capacity, kind, at, isOnTheirPage } = signature;
  const who = capacity === '' ? name : `${name}, ${capacity}`;
  const where = isOnTheirPage ? 'on their own page' : 'before the gallery';
  return [`Signed: ${who}, ${kindWords[kind]}, ${where}, ${formatInstant(at, zone)}.`];
}

/** Proposals in their versions, word for word, with what was answered. */
export function proposalEntries(proposals: readonly ProposalShown[]): Entry[] {
  return proposals.toReversed().map(({ version, body, contentSha256, sent, answer }) => {
    const became = answer
      ? [`${answer.by} said ${answer.accepted ? 'yes' : 'no'} on ${formatDay(answer.on, 'long')}.`]
      : [];
    return anEntry({
      title: `Proposal ${version}`,
      on: sent?.on ?? null,
      lines: [
        ...body.split('\n'),
        sent ? `Sent on ${formatDay(sent.on, 'long')}.` : 'It was not sent.',
        ...became,
      ],
      mark: { sha256: contentSha256, fits: sha256Of(body) === contentSha256 },
    });
  });
}

/** The agreement and each change order, word for word, with the name under it. */
export function agreementEntries(
  agreement: AgreementShown | null,
  changes: readonly ChangeOrderShown[],
  zone: string,
): Entry[] {
  const original = agreement
    ? [
        anEntry({
          title: 'Agreement',
          on: agreement.agreedOn,
          lines: [
            ...agreement.body.split('\n'),
            `Agreed by ${agreement.agreedBy}${agreement.signedWhere ? `, signed ${signedPlaceWords[agreement.signedWhere]}` : ''}.`,
            ...signedLine(agreement.signature, zone),
          ],
          drawing: agreement.signature?.fileId ?? null,
          mark: markOf(agreement.body, agreement.contentSha256),
        }),
      ]
    : [];
  return [...original, ...changes.map((change) => changeEntry(change, zone))];
}

function changeEntry(change: ChangeOrderShown, zone: string): Entry {
  const { number, body, contentSha256, signed, withdrawnWhy, offeredOn } = change;
  const open = withdrawnWhy === null ? 'Not signed yet.' : `Withdrawn: ${withdrawnWhy}`;
  return anEntry({
    title: `Change order ${number}`,
    on: signed?.on ?? offeredOn,
    lines: [...body.split('\n'), ...(signed ? signedLine(signed, zone) : [open])],
    drawing: signed?.fileId ?? null,
    mark: markOf(body, contentSha256),
  });
}

/** The hand-over, as it was signed. */
export function handOverEntries({ handed }: HandOverPaper, zone: string): Entry[] {
  if (!handed) return [];
  const { handedOn, body, contentSha256, signature } = handed;
  return [
    anEntry({
      title: 'Hand-over',
      on: handedOn,
      lines: [...body.split('\n'), ...signedLine(signature, zone)],
      drawing: signature?.fileId ?? null,
      mark: contentSha256 === null ? null : markOf(body, contentSha256),
    }),
  ];
}

function markOf(body: string, sha256: string) {
  return { sha256, fits: sha256Of(body) === sha256 };
}
