// Hand-over files of a layout program, dropped on the page or chosen: read into the text of a board file.

// No more than this is read: what is larger is told before the browser reads all of it.
const mostFiles = 200;
const mostBytes = 24 * 1024 * 1024;

// A dropped folder gives the files that lie in it, not those of its folders.
async function filesOf(transfer) {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry?.()).filter(Boolean);
  if (entries.length === 0) return [...transfer.files];
  const files = [];
  for (const entry of entries) {
    if (entry.isFile) files.push(entry);
    else files.push(...await inFolder(entry));
  }
  return Promise.all(files.map((entry) => new Promise((resolve, reject) => { entry.file(resolve, reject); })));
}

// A reader gives its folder in parts. Files are counted, not folders: what is cut short here is told as too many.
async function inFolder(folder) {
  const reader = folder.createReader();
  const files = [];
  for (;;) {
    const some = await new Promise((resolve, reject) => { reader.readEntries(resolve, reject); });
    files.push(...some.filter((each) => each.isFile));
    if (some.length === 0 || files.length > mostFiles) return files;
  }
}

const content = (file) => new Promise((resolve, reject) => {
  const reader = new FileReader();
  reader.addEventListener('load', () => resolve(reader.result.slice(reader.result.indexOf(',') + 1)));
  reader.addEventListener('error', () => reject(reader.error));
  reader.readAsDataURL(file);
});

// engine: who is asked. onImport({ text, picture }): files were read.
export function takeHandOver({ ask, silent }, onImport) {
  const chooser = document.getElementById('hand-over-files');
  const state = document.getElementById('hand-over-state');
  const told = document.getElementById('hand-over-told');
  const again = document.getElementById('hand-over-again');
  const unit = document.getElementById('hand-over-unit');
  const shift = [document.getElementById('hand-over-x'), document.getElementById('hand-over-y')];
  let last = [];

  function tell(words, lines) {
    state.textContent = words;
    told.replaceChildren(...lines.map((line) => Object.assign(document.createElement('li'), { textContent: line })));
    told.hidden = lines.length === 0;
  }

  async function read(files) {
    if (files.length === 0) return;
    const bytes = files.reduce((sum, file) => sum + file.size, 0);
    if (files.length > mostFiles || bytes > mostBytes) {
      const much = bytes > mostBytes ? `more than ${mostBytes / 1048576} MB` : `more than ${mostFiles} files`;
      tell(`Not read: ${much}. Drop the files of one board alone.`, []);
      return;
    }
    last = files;
    tell(`Reading ${files.length === 1 ? files[0].name : `${files.length} files`} ...`, []);
    try {
      const sent = await Promise.all(files.map(async (file) => ({ name: file.name, content: await content(file) })));
      const by = shift.map((input) => Number(input.value));
      const answer = await ask('/handed-over', JSON.stringify({
        files: sent, unit: unit.value ? Number(unit.value) : null, shift: by.some(Boolean) ? by : null,
      }));
      again.hidden = false;
      if (answer.status === 422) {
        tell('These files make no board:', (await answer.json()).diagnostics.map(({ text }) => text));
      } else if (!answer.ok) {
        tell(await answer.text(), []);
      } else {
        const import_ = await answer.json();
        tell('Read. The text is replaced here, not in the file; Ctrl+Z in it brings the earlier one back.', import_.told);
        onImport(import_);
      }
    } catch (error) {
      tell(error instanceof TypeError ? silent : `Not read: ${error.message}`, []);
    }
  }

  chooser.addEventListener('change', async () => {
    await read([...chooser.files]);
    chooser.value = '';
  });
  again.querySelector('button').addEventListener('click', () => read(last));

  // What falls beside the page's own places would be opened by the browser in place of the page.
  const carriesFiles = (event) => event.dataTransfer?.types.includes('Files');
  addEventListener('dragover', (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
    document.documentElement.classList.add('dropping');
  });
  addEventListener('dragleave', (event) => {
    if (event.relatedTarget === null) document.documentElement.classList.remove('dropping');
  });
  addEventListener('drop', async (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    document.documentElement.classList.remove('dropping');
    try {
      await read(await filesOf(event.dataTransfer));
    } catch (error) {
      tell(`Not read: ${error.message}`, []);
    }
  }, { capture: true });
}
