'use client';

/** What is left when even the frame of the pages broke: plain words, nothing borrowed. */
export default function GlobalFault({ reset }: Readonly<{ reset: () => void }>) {
  return (
    <html lang="en-US">
      <body>
        <main>
          <h1>That did not work, and it is our fault</h1>
          <p>Nothing was half done. Try it once more, or load the page again.</p>
          <button type="button" onClick={reset}>
            Try once more
          </button>
        </main>
      </body>
    </html>
  );
}
