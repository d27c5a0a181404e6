// The worker: the pipeline in WebAssembly, asked by messages. It answers one after the other; who wants it no longer ends the worker.
// { start: { base, pieces } } first: base is where the folder lies; pieces are the runtime's files by name where there is no folder.
// Then { id, path, query, body }; answered by { id, status, type, body }, with { stage } in between.
const moduleType = 'text/javascript';
let engine = null;

// The runtime looks for its pieces beside itself. A blob lies beside nothing: there they get a name that nothing is fetched from.
class PlacedUrl extends URL {
  constructor(url, base) { super(url, base?.startsWith('blob:') ? 'https://carried.invalid/' : base); }
}

async function start({ base, pieces }) {
  if (pieces) globalThis.URL = PlacedUrl;
  const place = (name) => (pieces ? URL.createObjectURL(new Blob([pieces.get(name)], { type: moduleType })) : `${base}_framework/${name}`);
  const { dotnet } = await import(place('dotnet.js'));
  let loaded = 0;
  const runtime = await dotnet
    .withResourceLoader(pieces ? (type, name) => {
      if (type === 'dotnetjs') return place(name);
      return Promise.resolve(new Response(pieces.get(name), { headers: { 'Content-Type': name.endsWith('.wasm') ? 'application/wasm' : '' } }));
    } : undefined)
    .withModuleConfig({ onDownloadResourceProgress: (done, all) => { if (done > loaded) postMessage({ loading: [loaded = done, all] }); } })
    .create();
  runtime.setModuleImports('engine', { told: (stage) => postMessage({ stage }) });
  engine = (await runtime.getAssemblyExports(runtime.getConfig().mainAssemblyName)).ShellForge.Browser.Engine;
  postMessage({ ready: true });
}

addEventListener('message', async ({ data }) => {
  try {
    if (data.start) {
      await start(data.start);
      return;
    }
    const status = engine.Ask(data.path, data.query, data.body ?? null);
    const body = engine.AnswerBody().slice();
    postMessage({ id: data.id, status, type: engine.AnswerType(), body }, [body.buffer]);
  } catch (error) {
    postMessage({ id: data.id, failed: String(error?.stack ?? error) });
  }
});
