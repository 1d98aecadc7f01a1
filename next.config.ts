import type { NextConfig } from 'next';

const config: NextConfig = {
  poweredByHeader: false,
  // Types are a gate of `npm test`; a gallery that starts should not wait for them.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ['@node-rs/argon2', 'pdfkit', 'sharp', 'pg'],
  experimental: {
    // A room that is not yours answers 403 with its own page (app/(rooms)/forbidden.tsx).
    authInterrupts: true,
    // A stock list of 50,000 rows is about 6 MB, a picture at most 25 MB.
    serverActions: { bodySizeLimit: '30mb' },
    proxyClientMaxBodySize: '30mb',
  },
};

export default config;
