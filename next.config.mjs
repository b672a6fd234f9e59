/**
 * Baseline headers for every answer. `frame-ancestors` is the only content policy set here; a stricter policy
 * is added by the server that knows the per-request nonce.
 */
const baselineHeaders = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Content-Security-Policy', value: "frame-ancestors 'none'" },
];

/** @type {import('next').NextConfig} */
const config = {
  // A second server on the same folder (browser tests, bench) must not share build output with the first.
  distDir: process.env.KITWRIGHT_DIST ?? '.next',
  // Native or wasm packages that read their own files at run time; bundling breaks their paths.
  serverExternalPackages: [
    'better-sqlite3',
    'pdfkit',
    'highs',
    'bwip-js',
    '@node-rs/argon2',
    'read-excel-file',
    'write-excel-file',
    'fflate',
  ],
  // Types are checked once, by `npm test`, over tests and scripts too; a build that did it again would take twice as long.
  typescript: { ignoreBuildErrors: true },
  images: { unoptimized: true },
  // `forbidden()` answers 403 with `app/forbidden.tsx`
  experimental: { authInterrupts: true },
  reactStrictMode: true,
  poweredByHeader: false,
  typedRoutes: false,
  async headers() {
    return [{ source: '/:path*', headers: baselineHeaders }];
  },
};

export default config;
