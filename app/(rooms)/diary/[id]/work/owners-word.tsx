'use client';

import { Notice } from '@/app/ui/page/notice';
import { wordsSaid } from '@/lib/installation/rules/work/ticks';
import { useWorkDay } from './day-shown';
import { SayWhy } from './say-why';
import css from './work.module.css';

/** Something has to be paid before the piece goes: whom to call, and for the owner, what to say. */
export function OwnersWord() {
  const { day, here } = useWorkDay();
  const said = wordsSaid(here.held, 'owner_word');
  if (said !== null) {
    return <p className={css['said']}>The owner lets it go before it is paid: {said}</p>;
  }
  if (!day.needsOwner) return null;
  if (!day.givesWord) {
    return (
      <Notice kind="caution" title="Call the owner before it is handed over">
        Something is to be paid before it goes. Only the owner can let it go without
        {day.phone === '' ? '' : ': '}
        {day.phone === '' ? (
          ''
        ) : (
          <a href={`tel:${day.phone.replace(/[^+\d]/g, '')}`}>{day.phone}</a>
        )}
        .
      </Notice>
    );
  }
  return (
    <Notice kind="caution" title="Something is to be paid before it goes">
      Take it first, or say why it goes anyway; whoever goes along can then have it signed.
      <SayWhy item="owner_word" label="Why it goes before it is paid" />
    </Notice>
  );
}
