/** A CSV file that the browser keeps, and that nothing on the way does. */
export function csvAnswer(text: string, fileName: string): Response {
  return new Response(text, {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="${fileName}"`,
      'Cache-Control': 'private, no-store',
    },
  });
}
