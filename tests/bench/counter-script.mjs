import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/**
 * How many bytes of gzipped JavaScript the counter's page needs, and how many a page needs that
 * holds nothing: what the framework itself brings along.
 *
 * @param {string} built folder of the build
 * @returns {{ counterBytes: number, emptyBytes: number }}
 */
export function counterScript(built) {
  const page = join(built, 'server/app/(rooms)/counter/page');
  const { rootMainFiles } = JSON.parse(readFileSync(join(page, 'build-manifest.json'), 'utf8'));
  const entries = entriesOf(`${page}_client-reference-manifest.js`);
  const framework = entries['[project]/app/layout'] ?? [];
  const ours = Object.values(entries).flat();
  return {
    counterBytes: gzippedBytes(built, [...rootMainFiles, ...ours]),
    emptyBytes: gzippedBytes(built, [...rootMainFiles, ...framework]),
  };
}

function entriesOf(file) {
  const found = /"entryJSFiles":(\{[^}]*\})/.exec(readFileSync(file, 'utf8'));
  if (!found?.[1]) throw new Error(`${file} does not say which scripts the counter needs.`);
  return JSON.parse(found[1]);
}

function gzippedBytes(built, files) {
  const sizes = [...new Set(files)].map((file) => gzipSync(readFileSync(join(built, file))).length);
  return sizes.reduce((sum, bytes) => sum + bytes, 0);
}
