// Workers that each hold the pipeline, and questions to them.

const inherit = (source) => URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));

// A worker made of a blob is under the page's own content policy: what the page may not fetch, it may not either.
// parts: { base } of a folder, or { source, pieces } of a page that carries everything.
export class PipelineWorker {
  #worker;
  #open = new Map();
  #last = 0;
  #told;
  #ready;
  #fail;

  // told({ stage } or { loading: [done, all] }): what it does.
  constructor(parts, told) {
    this.#told = told;
    // A page on disk may start no module as a worker, and engine.js is a script as well.
    this.#worker = parts.source ? new Worker(inherit(parts.source))
      : new Worker(inherit(`import ${JSON.stringify(`${parts.base}engine.js`)};`), { type: 'module' });
    this.#ready = new Promise((resolve, reject) => {
      this.#fail = reject;
      this.#worker.addEventListener('error', (event) => reject(new Error(event.message || 'the worker did not start')));
      this.#worker.addEventListener('message', ({ data }) => {
        if (data.ready) resolve();
        else if (data.id === undefined && data.failed) reject(new Error(data.failed));
        else this.#heard(data);
      });
    });
    this.#ready.catch(() => {});
    this.#worker.postMessage({ start: { base: parts.base, pieces: parts.pieces } });
  }

  get ready() { return this.#ready; }

  get isBusy() { return this.#open.size > 0; }

  #heard(data) {
    if (data.id === undefined) {
      this.#told(data);
      return;
    }
    const { resolve } = this.#open.get(data.id) ?? {};
    this.#open.delete(data.id);
    if (data.failed) console.error(data.failed);
    resolve?.(data.failed
      ? new Response('A defect of the program; the browser\'s console has it.', { status: 500 })
      : new Response(data.body, { status: Number.parseInt(data.status, 10), headers: { 'Content-Type': data.type } }));
  }

  ask(path, body) {
    const at = path.indexOf('?');
    const id = ++this.#last;
    return new Promise((resolve, reject) => {
      this.#open.set(id, { resolve, reject });
      this.#ready.then(
        () => this.#worker.postMessage({ id, path: at < 0 ? path : path.slice(0, at), query: at < 0 ? '' : path.slice(at + 1), body }),
        reject);
    });
  }

  end(error) {
    this.#worker.terminate();
    this.#fail(error);
    for (const { reject } of this.#open.values()) reject(error);
    this.#open.clear();
  }
}
