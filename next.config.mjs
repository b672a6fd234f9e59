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
};

export default config;
