// The engine behind the page that needs no server: two workers, one that reads at once while the other makes housings.
import { saveAs } from '../../ShellForge.Output/Page/web/src/taking.js';
import { PipelineWorker } from './workers.js';

const making = new Set(['/page', '/made']);
const storeName = 'shellforge-board';
const encoder = new TextEncoder();

// What was saved here before; a browser that keeps nothing keeps it for this visit.
function shelf() {
  let kept = null;
  return {
    get text() {
      try { return localStorage.getItem(storeName); } catch { return kept; }
    },
    set text(text) {
      kept = text;
      try { localStorage.setItem(storeName, text); } catch { /* Private windows have no store; the file is downloaded all the same. */ }
    },
  };
}

// parts: where the workers come from. on: loading([done, all]) and work(stage), what they do, null when it is through; dropped(), it is
// not wanted any more; written(text), what stands in the editor.
export function local(parts, on) {
  const saved = shelf();
  const reader = new PipelineWorker(parts, ({ loading }) => { if (loading) on.loading(loading); });
  let maker = null;
  let handlers = null;
  let underWay = 0;

  const stopped = () => Object.assign(new Error('stopped'), { told: 'Stopped. The housing that is shown is the last one that was ready.' });
  const superseded = () => new DOMException('The board file has changed meanwhile.', 'AbortError');

  function begin() {
    maker = new PipelineWorker(parts, ({ stage }) => { if (stage) on.work(stage); });
  }

  function end(error) {
    maker?.end(error);
    maker = null;
  }

  async function make(path, text, signal) {
    signal?.throwIfAborted();
    if (!maker) begin();
    const mine = maker;
    // Work that nobody waits for any more is ended with its worker: it hears nothing until it is through.
    const giveUp = () => { if (maker === mine && mine.isBusy) end(superseded()); };
    signal?.addEventListener('abort', giveUp);
    underWay++;
    try {
      const answer = await mine.ask(path, text);
      if (underWay === 1) on.work(null);
      return answer;
    } catch (error) {
      if (!error.told) on.dropped();
      throw error;
    } finally {
      signal?.removeEventListener('abort', giveUp);
      underWay--;
    }
  }

  function file(path, body) {
    if (body !== undefined) {
      saved.text = body;
      saveAs('board.yaml', new Blob([body]));
    }
    const { text } = saved;
    return Response.json({ text, stamp: text === null ? '' : String(text.length) + text });
  }

  return {
    silent: 'The workshop has stopped; load the page again.',
    shown: 'Made on this machine',
    pause: { typed: 600, slid: 400 },
    readsBeside: true,
    ready: reader.ready,
    hasText: () => saved.text !== null,

    async ask(path, body, signal) {
      const at = path.replace(/\?.*$/, '');
      if (at === '/file') return file(path, body);
      // The file as it was saved is here, not with the workers.
      const text = body ?? (making.has(at) || at === '/mistakes' ? saved.text ?? undefined : undefined);
      const bytes = text === undefined ? undefined : encoder.encode(text);
      if (!making.has(at)) return reader.ask(path, bytes);

      // Mistakes are told at once, whatever the other is busy with.
      const query = new URLSearchParams(path.slice(at.length + 1));
      const set = new URLSearchParams(query.getAll('set').map((each) => ['set', each]));
      const read = await reader.ask(`/mistakes?${set}`, bytes);
      return read.ok ? make(path, bytes, signal) : read;
    },

    listen(to) { handlers = to; },
    take: (text) => handlers.take(text),
    again: () => handlers.changed(),
    stop: () => end(stopped()),
    written: on.written,
  };
}
