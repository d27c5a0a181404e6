// With the page served by the command: follow the board file, write in it, and try numbers.
import { askOpenQuestions } from './asking.js';
import { openEditor } from './editor.js';
import { takeHandOver } from './handover.js';
import { offerFiles } from './taking.js';

export function follow(onFresh) {
  const banner = document.getElementById('live-state');
  const { key } = banner.dataset;
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

  // Only this page knows the key: nobody else's page can ask.
  const ask = (path, body, signal) => fetch(path, {
    headers: { 'X-Key': key }, ...(body === undefined ? {} : { method: 'POST', body }), signal,
  });

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

  const forgetFiles = offerFiles(ask, () => ({ query: numbers(), draft: draft ?? undefined }));

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
        const what = chosen.size > 0 ? 'With the numbers that you try' : draft === null ? state.textContent : 'With what you wrote, not saved yet';
        banner.textContent = `${what}${isChecked ? '' : ', being checked'}`;
        document.documentElement.dataset.version = state.dataset.version;
        document.documentElement.dataset.state = isChecked ? 'checked' : 'shown';
      }
    } catch (error) {
      if (error.name !== 'AbortError' && mine === asked) banner.textContent = 'The command does not answer.';
    }
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
    timer = setTimeout(refresh, 90);
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

  const events = new EventSource(`/events?${new URLSearchParams({ key })}`);
  let opened = false;
  events.addEventListener('changed', async () => {
    await editor?.fileChanged();
    refresh();
  });
  events.addEventListener('open', () => { if (opened) refresh(); opened = true; });
  // A stream that is refused is closed for good, while the page itself is answered as ever; one whose command has gone is asked for again.
  events.addEventListener('error', () => {
    if (opened || events.readyState !== EventSource.CLOSED) {
      banner.textContent = 'The command has stopped; this page no longer follows the file.';
      return;
    }
    banner.before(Object.assign(document.createElement('p'), {
      id: 'live-apart',
      className: 'live broken',
      textContent: 'This page is open in too many tabs and does not follow the file: close some, then load it again.',
    }));
  });
  refresh();
  openEditor(ask, (changed, text) => {
    draft = changed;
    clearTimeout(timer);
    timer = setTimeout(() => {
      refresh();
      questions.refresh(text);
    }, 250);
  }).then((opened_) => {
    editor = opened_;
    window.housing.editor = editor.view;
    questions = askOpenQuestions(ask, editor);
    questions.refresh(editor.text());
    takeHandOver(ask, ({ text, picture }) => {
      editor.take(text);
      questions.picture(picture);
    });
  });
}
