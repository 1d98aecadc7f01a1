// npm start: from a bare clone to an open gallery. This file runs before anything is installed,
// on any Node, so it uses nothing but Node itself.

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  process.stderr.write(
    `Kiln & Counter needs Node 20.19 or newer; this is Node ${process.versions.node}.\n`,
  );
  process.exit(1);
}

import('./begin.mjs').then(({ begin }) => begin(process.argv.slice(2)));
