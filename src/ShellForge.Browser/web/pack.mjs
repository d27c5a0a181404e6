// Joins the published runtime with the page: the folder of static files, and the same as one HTML file.
// usage: node pack.mjs PUBLISHED-WWWROOT OUT-FOLDER NOTICES-OF-THE-RUNTIME
// The page's packages must be there: they are when ShellForge.Output is built.
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const pageFolder = join(here, '../../ShellForge.Output/Page/web');
const require = createRequire(join(pageFolder, 'package.json'));
const { build } = require('esbuild');
const { deflateSync } = await import(require.resolve('three/addons/libs/fflate.module.js'));
const [published, out, runtimeNotices] = process.argv.slice(2);

rmSync(out, { recursive: true, force: true });
mkdirSync(join(out, 'folder'), { recursive: true });
const folder = join(out, 'folder');
cpSync(join(published, '_framework'), join(folder, '_framework'), { recursive: true });
for (const name of ['index.html', 'workshop.css', 'engine.js']) cpSync(join(here, name), join(folder, name));
cpSync(join(pageFolder, 'src/page.css'), join(folder, 'page.css'));

const { outputFiles: [script] } = await build({
  entryPoints: [join(here, 'workshop.js')],
  outdir: folder,
  bundle: true,
  minify: true,
  format: 'esm',
  target: ['es2022'],
  loader: { '.yaml': 'text' },
  legalComments: 'none',
  write: false,
  logLevel: 'warning',
});
const notices = ['../../THIRD-PARTY-NOTICES.txt', runtimeNotices].map((path) => readFileSync(resolve(here, path), 'utf8')).join('\n');
const licence = readFileSync(join(here, '../../../LICENSE'), 'utf8');
writeFileSync(join(folder, 'workshop.js'), script.text);
writeFileSync(join(folder, 'NOTICES.txt'), `${licence}\n${notices}`);

const all = (at) => readdirSync(at).flatMap((name) => (statSync(join(at, name)).isDirectory() ? all(join(at, name)) : [join(at, name)]));
const files = all(folder).map((path) => relative(folder, path).replaceAll('\\', '/')).sort();
const hash = createHash('sha256');
for (const name of files) hash.update(name).update(readFileSync(join(folder, name)));
const version = `shellforge-${hash.digest('hex').slice(0, 16)}`;
writeFileSync(join(folder, 'offline.js'), readFileSync(join(here, 'offline.js'), 'utf8')
  .replace('const FILES = [];', `const FILES = ${JSON.stringify(['./', ...files])};`).replace("const VERSION = '';", `const VERSION = '${version}';`));

// One file: everything stands in the page, and its policy lets it fetch nothing at all.
const packed = (bytes) => Buffer.from(deflateSync(new Uint8Array(bytes), { level: 9 })).toString('base64');
const pieces = [...files.filter((name) => name.startsWith('_framework/')), 'engine.js']
  .map((name) => `<script type="text/plain" data-piece="${name.replace('_framework/', '')}">${packed(readFileSync(join(folder, name)))}</script>`);
const css = ['page.css', 'workshop.css'].map((name) => readFileSync(join(folder, name), 'utf8')).join('\n');
const single = readFileSync(join(here, 'index.html'), 'utf8')
  .replace(/content="default-src[^"]*"/, () => `content="default-src 'none'; script-src 'unsafe-inline' blob: 'wasm-unsafe-eval'; worker-src blob:; `
    + `style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; form-action 'none'"`)
  .replace(/<link rel="stylesheet" href="page.css">\n<link rel="stylesheet" href="workshop.css">/, () => `<style>${css}</style>`)
  .replace(/Loading the workshop \.\.\.[^<]*/, 'Loading the workshop ...')
  .replace('<li><b>It works without a network</b> once it has been loaded.</li>', '<li><b>It works without a network:</b> everything is in this one file.</li>')
  .replace('<script type="module" src="workshop.js"></script>',
    () => `${pieces.join('\n')}\n<script type="module">${script.text.replaceAll('</script', '<\\/script')}</script>\n<!--\n${notices.replaceAll('--', '- -')}\n-->`);
writeFileSync(join(out, 'shellforge-workshop.html'), single);
const size = (paths) => (paths.reduce((sum, path) => sum + statSync(path).size, 0) / 1e6).toFixed(1);
console.log(`${version}: ${files.length + 1} files of ${size(all(folder))} MB, one file of ${size([join(out, 'shellforge-workshop.html')])} MB`);
