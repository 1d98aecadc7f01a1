import Link from 'next/link';
import type { ReactNode } from 'react';

type WayProps = Readonly<{
  href: string;
  children: ReactNode;
  className?: string | undefined;
  /** The browser keeps the file instead of opening it. */
  download?: boolean | undefined;
}>;

/** A link. What leads to a paper is never fetched ahead, because making the paper is work. */
export function Way({ href, children, className, download }: WayProps) {
  if (download || isPaper(href)) {
    return (
      <a href={href} download={download} className={className}>
        {children}
      </a>
    );
  }
  return (
    <Link href={href} className={className}>
      {children}
    </Link>
  );
}

function isPaper(href: string): boolean {
  return /\/(pdf|ics)(\?|$)/.test(href);
}
