/** The letters for which the gallery has words to begin with. */
export const letterKinds = ['page', 'sketch', 'proposal', 'invoice', 'day_moves'] as const;

/** One of the {@link letterKinds}. */
export type LetterKind = (typeof letterKinds)[number];

/** Each kind as one chooses it. */
export const letterNames: Readonly<Record<LetterKind, string>> = {
  page: 'Their page',
  sketch: 'Something to look at',
  proposal: 'A proposal',
  invoice: 'Money asked for',
  day_moves: 'The day moves',
};

/** What a letter begins with: who writes to whom, and about which work. */
export type LetterAbout = Readonly<{ toName: string; title: string; gallery: string }>;

/** The subject and the words of a letter. */
export type LetterDraft = { subject: string; words: string };

type Words = (about: LetterAbout) => { subject: string; body: string };

const drafts: Readonly<Record<LetterKind, Words>> = {
  page: ({ title }) => ({
    subject: `Your page for ${title}`,
    body: `There is a page for ${title}, on which you can see how it comes along and say what you think of it. It is yours alone: please keep its address to yourself.`,
  }),
  sketch: ({ title }) => ({
    subject: `Something to look at: ${title}`,
    body: `There is something new to look at for ${title}. Please take your time with it on your page, and say yes there, or mark what should be otherwise. Colours look different on every screen: what counts is the fired tile in your hand.`,
  }),
  proposal: ({ title }) => ({
    subject: `Our proposal for ${title}`,
    body: `The proposal for ${title} is on your page: what is made, what it costs, when each part is paid and until when it holds. Please read it there, and ask us whatever is not clear before you answer.`,
  }),
  invoice: ({ title }) => ({
    subject: `Payment for ${title}`,
    body: `A part of the price of ${title} is due now. What it is for, how much it is and until when it is to be paid stands on your page, with the paper for your files.`,
  }),
  day_moves: ({ title }) => ({
    subject: `The day moves: ${title}`,
    body: `The day for ${title} moves. Why it does, and to which day, stands on your page. If the new day does not suit you, please tell us, and we will speak about what can be done.`,
  }),
};

/**
 * The words of a letter to begin with; whoever sends it may change all of them.
 *
 * @example draftOf('page', …).words begins with 'Dear Marit Oland,'
 */
export function draftOf(kind: LetterKind, about: LetterAbout): LetterDraft {
  const { subject, body } = drafts[kind](about);
  return {
    subject,
    words: `Dear ${about.toName},\n\n${body}\n\nWith kind regards,\n${about.gallery}`,
  };
}

/**
 * The words as they go out, with the address of the page under them; it is not kept with the words.
 *
 * @param address null for a letter without one
 */
export function wordsWithAddress(words: string, address: string | null): string {
  return address ? `${words}\n\nYour page opens at this address:\n${address}\n` : `${words}\n`;
}

/**
 * The words without anything that looks like the address of a page, so that no secret is kept.
 *
 * @example withoutAddresses('See https://example.org/c/…43 letters…') // 'See (the address of the page)'
 */
export function withoutAddresses(words: string): string {
  return words.replace(/\S*\/c\/[A-Za-z0-9_-]{43}\S*/g, '(the address of the page)');
}

/** An address that one's own mail program opens with the letter in it. */
export function mailtoOf(toAddress: string, { subject, words }: LetterDraft): string {
  const [to, about, text] = [toAddress, subject, words].map(encodeURIComponent);
  return `mailto:${to}?subject=${about}&body=${text?.replaceAll('%0A', '%0D%0A')}`;
}
