'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

const everyMs = 1_000;

/** Looks at the page again every second for as long as it stands there. */
export function LookAgain() {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => {
      router.refresh();
    }, everyMs);
    return () => {
      clearInterval(timer);
    };
  }, [router]);
  return null;
}
