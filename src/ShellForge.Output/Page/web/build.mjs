// Bundles the page's script and style into one file each. usage: node build.mjs OUT-FOLDER
import { build } from 'esbuild';

const out = process.argv[2] ?? 'dist';
await build({
  entryPoints: { page: 'src/page.js' },
  bundle: true,
  minify: true,
  format: 'iife',
  target: ['es2022'],
  legalComments: 'none',
  outdir: out,
  logLevel: 'warning',
});
