import 'server-only';

/** A PDF as an answer that a browser shows, and nobody on the way keeps. */
export function pdfAnswer(bytes: Uint8Array<ArrayBuffer>, name: string): Response {
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${name}.pdf"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
