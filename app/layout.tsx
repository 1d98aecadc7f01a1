import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { sans, sansFar, serif, serifFar } from '@/app/fonts/faces';
import '@/app/styles/tokens.css';
import '@/app/styles/ground.css';

// Every page is drawn for its request: its scripts carry that request's nonce, or do not run.
export const dynamic = 'force-dynamic';

export const metadata: Metadata = {
  title: { default: 'Kiln & Counter', template: '%s · Kiln & Counter' },
  description: 'The gallery and the studio, in one place.',
  robots: { index: false, follow: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  colorScheme: 'light dark',
};

/** What every page stands in: the language, the two hands of type and the colours. */
export default function RootLayout({ children }: Readonly<{ children: ReactNode }>) {
  const faces = [serif, sans, serifFar, sansFar].map((face) => face.variable).join(' ');
  return (
    <html lang="en-US" className={faces}>
      <body>{children}</body>
    </html>
  );
}
