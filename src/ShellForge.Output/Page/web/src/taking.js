// The files of the housing that is shown, to be taken from the page: what 'make' would write.

const size = (bytes) => (bytes < 100_000 ? `${Math.max(1, Math.round(bytes / 1000))} kB` : `${(bytes / 1e6).toFixed(1)} MB`);

export function saveAs(name, blob) {
  const link = Object.assign(document.createElement('a'), { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

// engine: who is asked. wanted(): the query and the text of what is shown.
export function offerFiles({ ask, silent }, wanted) {
  const button = document.getElementById('list-made');
  const state = document.getElementById('made-state');
  const list = document.getElementById('made-files');

  async function get(what) {
    const { query, draft } = wanted();
    for (const [key, value] of Object.entries(what)) query.append(key, value);
    const answer = await ask(`/made?${query}`, draft);
    if (answer.status === 422) throw new Error('The board file has mistakes; they stand above.');
    if (!answer.ok) throw new Error(await answer.text());
    return answer;
  }

  async function doing(words, work, done) {
    state.textContent = words;
    button.disabled = true;
    try {
      await work();
      state.textContent = done;
    } catch (error) {
      state.textContent = error instanceof TypeError ? silent : error.message;
    }
    button.disabled = false;
  }

  button.addEventListener('click', () => doing('Making them ...', async () => {
    const { files } = await (await get({})).json();
    const offered = (words, name, what) => {
      const take = Object.assign(document.createElement('button'), { type: 'button', className: 'plain small', textContent: words });
      take.addEventListener('click', () => doing(`Fetching ${name} ...`, async () => saveAs(name, await (await get(what)).blob()), ''));
      return take;
    };
    const item = (...parts) => {
      const row = document.createElement('li');
      row.append(...parts);
      return row;
    };
    list.replaceChildren(
      item(offered('All in one archive', 'housing.zip', { archive: '1' })),
      ...files.map(({ name, bytes }) => item(offered(name, name, { name }), ` ${size(bytes)}`)));
    list.hidden = false;
  }, 'Of the housing that is shown.'));

  // What was listed is of an earlier housing.
  return () => {
    list.hidden = true;
    state.textContent = '';
  };
}
