// Bundles the page's script into one file, deflated and as base64, as the page carries it: it is packed once here, not with every page.
// usage: node build.mjs OUT-FOLDER
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

// Of the lock file, so that the bytes don't depend on the Node that runs this; three has it along.
import { deflateSync } from 'three/addons/libs/fflate.module.js';

const out = process.argv[2] ?? 'dist';

// What the page carries of others goes with every page, so its licence does too.
const notice = readFileSync('node_modules/three/LICENSE', 'utf8').replaceAll('\r\n', '\n').trim();
const { outputFiles: [script] } = await build({
  entryPoints: ['src/page.js'],
  bundle: true,
  minify: true,
  format: 'iife',
  target: ['es2022'],
  legalComments: 'none',
  banner: { js: `/*! This script contains three.js.\n\n${notice}\n*/` },
  write: false,
  logLevel: 'warning',
});
mkdirSync(out, { recursive: true });
writeFileSync(join(out, 'page.packed'), Buffer.from(deflateSync(script.contents, { level: 9 })).toString('base64'));
