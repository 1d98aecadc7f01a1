/** What was just done, as the sheet says it when one comes back to it. */
export const doneWords = {
  logged: 'The request is written down. What is not known yet can be added when it is.',
  changed: 'What is known now is written down.',
  pictures: 'The pictures are with the request.',
  'proposal-sent': 'The proposal has gone out. Now it waits for an answer.',
  'proposal-answered': 'The answer is written down, bound to exactly this proposal.',
  signed: 'It is signed, bound to exactly these words.',
  change: 'The change order is written down. It counts once it is signed.',
  withdrawn: 'The change order no longer holds.',
  changes: 'The changes that were asked for are written down.',
  given: 'The twin of the tile is in their hands.',
  'ask-back': 'What was asked for is taken back; the reason stays.',
  refund: 'The money has gone back; its paper is made.',
  link: 'The page is open for whoever holds its address.',
  shut: 'That address no longer opens the page.',
  days: 'The days are on their page. Choosing is theirs.',
  progress: 'It is written down.',
  assembly: 'It is on its board. Nothing is stood up or hung before it has cured.',
  delay: 'The notice is written down.',
  fired: 'The colour is written down beside its tile.',
  agreement: 'The agreement is written down.',
  sketch: 'The sketch is on the sheet. Now it waits for a yes.',
  colours: 'The colour tile is on the sheet. Now it waits for a yes.',
  yes: 'The yes is written down, bound to exactly this picture.',
  ask: 'The money is asked for.',
  job: 'The job is open in the studio.',
  begin: 'The making may begin; the reason stays on the sheet.',
  'hand-over': 'The piece is handed over. Its receipt is made.',
  end: 'The commission has ended.',
} as const;

/** One of the things that a sheet confirms. */
export type DoneKey = keyof typeof doneWords;

/** The address of a sheet, told what was just done. */
export function sheetHref(number: number, done?: DoneKey): string {
  return `/commissions/${number}${done ? `?done=${done}` : ''}`;
}

/** What was just done, from the address; null for anything else. */
export function doneSentence(done: string | string[] | undefined): string | null {
  const key = (Object.keys(doneWords) as DoneKey[]).find((each) => each === done);
  return key ? doneWords[key] : null;
}
