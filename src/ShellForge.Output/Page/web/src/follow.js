// With the page served by the command: follow the board file, and try numbers.
export function follow(onFresh) {
  const banner = document.getElementById('live-state');
  const chosen = new Map();
  let asked = 0;

  const address = () => {
    const query = new URLSearchParams();
    for (const [path, value] of chosen) query.append('set', `${path}=${value}`);
    return `/page?${query}`;
  };

  async function refresh() {
    const mine = ++asked;
    const answer = await fetch(address());
    if (mine !== asked) return;
    if (answer.status === 422) {
      const { diagnostics } = await answer.json();
      banner.className = 'live broken';
      const list = document.createElement('ul');
      list.append(...diagnostics.map((line) => Object.assign(document.createElement('li'), { textContent: line })));
      banner.replaceChildren(Object.assign(document.createElement('p'), { textContent: 'The file has mistakes; the last good housing is shown.' }), list);
      return;
    }
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html');
    await onFresh(fresh);
    banner.className = 'live';
    banner.textContent = `Following the file. Version ${fresh.getElementById('live-state')?.dataset.version ?? ''}`;
    document.documentElement.dataset.version = fresh.getElementById('live-state')?.dataset.version ?? '';
  }

  function showLine() {
    const line = [...chosen].map(([path, value]) => `--set ${path}=${value}`).join(' ');
    document.getElementById('set-line').value = line;
  }

  document.getElementById('tries')?.addEventListener('input', (event) => {
    const { path } = event.target.dataset;
    if (!path) return;
    chosen.set(path, event.target.value);
    event.target.closest('.try').querySelector('output').textContent = event.target.value;
    showLine();
    clearTimeout(follow.timer);
    follow.timer = setTimeout(refresh, 120);
  });
  document.getElementById('copy-set')?.addEventListener('click', () => {
    navigator.clipboard?.writeText(document.getElementById('set-line').value);
  });
  document.getElementById('forget-set')?.addEventListener('click', () => {
    chosen.clear();
    showLine();
    refresh();
  });

  const events = new EventSource('/events');
  events.addEventListener('changed', refresh);
  events.addEventListener('error', () => { banner.textContent = 'The command has stopped; this page no longer follows the file.'; });
}
