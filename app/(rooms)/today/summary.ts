import type { Today } from './gathered';

/**
 * The day in one or two sentences: whose turn it is, and what is booked for today.
 *
 * @example 'Two commissions are our turn, one is the collector’s. Nothing is booked for today.'
 */
export function summaryOf({ waiting, diary, todayOn }: Today): string {
  return [turnsOf(waiting), diary ? bookedOf(diary, todayOn) : null].filter(Boolean).join(' ');
}

function turnsOf(waiting: Today['waiting']): string {
  const count = (ours: boolean) =>
    waiting
      .filter((group) => (group.on === 'collector') !== ours)
      .reduce((sum, group) => sum + group.commissions.length, 0);
  const ours = count(true);
  const theirs = count(false);
  if (ours + theirs === 0) return 'No commission waits on anybody.';
  if (theirs === 0) return `${commissions(ours)} ${ours === 1 ? 'waits' : 'wait'} on us.`;
  const collector = theirs === 1 ? 'its collector' : 'their collectors';
  if (ours === 0)
    return `${commissions(theirs)} ${theirs === 1 ? 'waits' : 'wait'} on ${collector}.`;
  return `${commissions(ours)} ${ours === 1 ? 'waits' : 'wait'} on us, ${theirs} on ${collector}.`;
}

function commissions(count: number): string {
  return count === 1 ? 'One commission' : `${count} commissions`;
}

function bookedOf(diary: NonNullable<Today['diary']>, todayOn: string): string {
  const today = diary.filter((one) => one.startsOn === todayOn).length;
  if (today === 0) return 'Nothing is booked for today.';
  return today === 1 ? 'One appointment is today.' : `${today} appointments are today.`;
}
