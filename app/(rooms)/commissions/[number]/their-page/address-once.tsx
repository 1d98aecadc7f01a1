'use client';

import { useContext, useRef, useState } from 'react';
import { Button } from '@/app/ui/button/button';
import { FormAnswer } from '@/app/ui/form/form-answer';
import css from './their-page.module.css';

type AddressOnceProps = Readonly<{ before: string; after: string; subject: string; to: string }>;

/** The address that was just made, in a letter to copy, or to open in one's own mail program. */
export function AddressOnce({ before, after, subject, to }: AddressOnceProps) {
  const state = useContext(FormAnswer);
  const area = useRef<HTMLTextAreaElement>(null);
  const [copied, setCopied] = useState<string | null>(null);
  const address = state.kind === 'done' ? state.href : undefined;
  if (!address) return null;
  const words = `${before}\n\nYour page opens at this address:\n${address}\n\n${after}`;
  const copy = async () => {
    area.current?.select();
    try {
      await navigator.clipboard.writeText(words);
      setCopied('Copied.');
    } catch {
      setCopied('It is marked: copy it with the keys of this machine.');
    }
  };
  return (
    <div className={css['once']}>
      <label htmlFor="address-once">A letter to copy, with the address in it</label>
      <textarea id="address-once" ref={area} readOnly rows={13} value={words} />
      <div className={css['acts']}>
        <Button variant="quiet" onClick={() => void copy()}>
          Copy it
        </Button>
        <a
          href={`mailto:${encodeURIComponent(to)}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(words).replaceAll('%0A', '%0D%0A')}`}
        >
          Open it in your own mail
        </a>
        <span role="status">{copied}</span>
      </div>
    </div>
  );
}
