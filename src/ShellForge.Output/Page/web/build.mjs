// Bundles the page's scripts, each into one file, deflated and as base64, as the page carries it: packed once here, not with every page.
// usage: node build.mjs OUT-FOLDER
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

// Of the lock file, so that the bytes don't depend on the Node that runs this; three has it along.
import { deflateSync } from 'three/addons/libs/fflate.module.js';

const out = process.argv[2] ?? 'dist';
mkdirSync(out, { recursive: true });

// What a page carries of others goes with every page, so their licences do too.
const licence = (name) => readFileSync(join('node_modules', name, 'LICENSE'), 'utf8').replaceAll('\r\n', '\n').trim();
const named = (name) => (name === 'three' ? 'three.js' : name);
const notice = (names) => `/*! ${names.map((name) => `This script contains ${named(name)}.\n\n${licence(name)}`).join('\n\n')}\n*/\n`;
const packageOf = (path) => /^node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1];

for (const name of ['report', 'bench']) {
  const { outputFiles: [script], metafile } = await build({
    entryPoints: [`src/${name}.js`],
    outdir: out,
    bundle: true,
    minify: true,
    format: 'iife',
    target: ['es2022'],
    legalComments: 'none',
    metafile: true,
    write: false,
    logLevel: 'warning',
  });
  const contained = [...new Set(Object.keys(metafile.inputs).map(packageOf).filter(Boolean))].sort();
  const bytes = new TextEncoder().encode(notice(contained) + script.text);
  writeFileSync(join(out, `${name}.packed`), Buffer.from(deflateSync(bytes, { level: 9 })).toString('base64'));
}
