/** The number of a receipt from its address; null when it is none. */
export function readNumber(text: string): number | null {
  return /^[1-9]\d{0,8}$/.test(text) ? Number(text) : null;
}

/** A PDF as it is sent: shown by the browser, kept by nobody on the way. */
export function pdfAnswer(bytes: Uint8Array<ArrayBuffer>, name: string): Response {
  return new Response(bytes, {
    headers: {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${name}"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
