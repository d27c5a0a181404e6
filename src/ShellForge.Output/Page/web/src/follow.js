// The page at work: follow the board file, write in it, and try numbers. Who answers is an engine, as server.js describes it.
import { askOpenQuestions } from './asking.js';
import { openEditor } from './editor.js';
import { takeHandOver } from './handover.js';
import { offerFiles } from './taking.js';

export const follow = (engine) => (onFresh) => {
  const banner = document.getElementById('live-state');
  const { ask } = engine;
  let draft = null;
  let editor = null;
  let questions = null;
  const chosen = new Map();
  let asked = 0;
  let running = null;
  let timer = 0;
  let shown = false;

  const numbers = () => new URLSearchParams([...chosen].map(([path, value]) => ['set', `${path}=${value}`]));
  const address = (isChecked) => {
    const query = numbers();
    if (isChecked) query.append('checked', '1');
    return `/page?${query}`;
  };

  function tellMistakes({ diagnostics, isBegun }) {
    const verdict = document.querySelector('.verdict');
    verdict.className = 'verdict busy';
    verdict.textContent = shown ? 'Shown: the last good housing' : 'Nothing to show yet';
    document.documentElement.classList.toggle('empty', !shown);
    document.documentElement.dataset.state = 'broken';
    editor?.mark(isBegun ? [] : diagnostics);
    if (isBegun) {
      banner.className = 'live';
      banner.textContent = 'A new board file: drop the files that your layout program handed over on this page, or write it here.';
      return;
    }
    const what = chosen.size > 0 ? 'This number does not go' : draft === null ? 'The file has mistakes' : 'What you wrote has mistakes';
    const tried = shown ? `${what}; the last good housing is shown.` : `${what}. The housing appears here when they are gone.`;
    const list = document.createElement('ul');
    for (const { text, source } of diagnostics) {
      const item = Object.assign(document.createElement('li'), { textContent: text });
      if (source) item.append(Object.assign(document.createElement('code'), { textContent: source }));
      list.append(item);
    }
    banner.className = 'live broken';
    banner.replaceChildren(Object.assign(document.createElement('p'), { textContent: tried }), list);
  }

  const forgetFiles = offerFiles(engine, () => ({ query: numbers(), draft: draft ?? undefined }));

  // The housing comes at once, what the rules say about it when they are through.
  async function refresh() {
    const mine = ++asked;
    forgetFiles();
    running?.abort();
    document.documentElement.dataset.state = 'asked';
    running = new AbortController();
    try {
      for (const isChecked of [false, true]) {
        const answer = await ask(address(isChecked), draft ?? undefined, running.signal);
        const text = await answer.text();
        if (mine !== asked) return;
        if (answer.status === 422) {
          tellMistakes(JSON.parse(text));
          return;
        }
        if (!answer.ok) throw new Error(text);
        const fresh = new DOMParser().parseFromString(text, 'text/html');
        const state = fresh.getElementById('live-state');
        await onFresh(fresh, chosen.size > 0 || draft !== null);
        editor?.mark([]);
        keepTries(fresh);
        shown = true;
        document.documentElement.classList.remove('empty');
        banner.className = 'live';
        const what = chosen.size > 0 ? 'With the numbers that you try' : draft === null ? engine.shown ?? state.textContent : 'With what you wrote, not saved yet';
        banner.textContent = `${what}${isChecked ? '' : ', being checked'}`;
        document.documentElement.dataset.version = state.dataset.version;
        document.documentElement.dataset.state = isChecked ? 'checked' : 'shown';
      }
    } catch (error) {
      if (error.name !== 'AbortError' && mine === asked) banner.textContent = error.told ?? engine.silent;
    }
  }

  // Told while the key is hardly up; a text without any waits for its housing.
  async function lookForMistakes() {
    const mine = draft;
    const answer = await ask(`/mistakes?${numbers()}`, draft ?? undefined);
    if (answer.status !== 422 || mine !== draft) return;
    asked++;
    running?.abort();
    tellMistakes(await answer.json());
  }

  // A number that was not touched is the file's.
  function keepTries(fresh) {
    // A page that began with a file that can't be used has none yet.
    if (!document.querySelector('#tries .try')) document.querySelector('#tries p').after(...fresh.querySelectorAll('#tries .try'));
    for (const input of document.querySelectorAll('#tries input[data-path]')) {
      const other = fresh.querySelector(`#tries input[data-path="${CSS.escape(input.dataset.path)}"]`);
      if (other && !chosen.has(input.dataset.path)) {
        input.value = other.getAttribute('value');
        input.closest('.try').querySelector('output').textContent = other.getAttribute('value');
      }
    }
  }

  function showLine() {
    document.getElementById('set-line').value = [...chosen].map(([path, value]) => `--set ${path}=${value}`).join(' ');
  }

  document.getElementById('tries')?.addEventListener('input', (event) => {
    const { path } = event.target.dataset;
    if (!path) return;
    chosen.set(path, event.target.value);
    event.target.closest('.try').querySelector('output').textContent = event.target.value;
    showLine();
    clearTimeout(timer);
    timer = setTimeout(refresh, engine.pause.slid);
  });
  document.getElementById('copy-set')?.addEventListener('click', async (event) => {
    const line = document.getElementById('set-line');
    try {
      await navigator.clipboard.writeText(line.value);
    } catch {
      line.select();
      document.execCommand('copy');
    }
    event.target.textContent = 'Copied';
    setTimeout(() => { event.target.textContent = 'Copy'; }, 1500);
  });
  document.getElementById('write-set')?.addEventListener('click', () => {
    const values = [...chosen];
    chosen.clear();
    showLine();
    editor?.put(values);
  });
  document.getElementById('forget-set')?.addEventListener('click', () => {
    chosen.clear();
    showLine();
    refresh();
  });

  engine.listen({
    async changed() {
      await editor?.fileChanged();
      refresh();
    },
    take: (text) => editor?.take(text),
  });
  refresh();
  openEditor(engine, (changed, text) => {
    draft = changed;
    clearTimeout(timer);
    engine.written?.(text);
    if (engine.readsBeside) lookForMistakes();
    timer = setTimeout(() => {
      refresh();
      questions.refresh(text);
    }, engine.pause.typed);
  }).then((opened_) => {
    editor = opened_;
    window.housing.editor = editor.view;
    questions = askOpenQuestions(engine, editor);
    questions.refresh(editor.text());
    engine.written?.(editor.text());
    takeHandOver(engine, ({ text, picture }) => {
      editor.take(text);
      questions.picture(picture);
    });
  });
};
