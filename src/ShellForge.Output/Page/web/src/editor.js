// The board file beside its housing: typed in here, looked at at once, written only when it is saved.
import { autocompletion, closeBrackets, closeBracketsKeymap, completionKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, isolateHistory } from '@codemirror/commands';
import { yaml } from '@codemirror/lang-yaml';
import { bracketMatching, HighlightStyle, indentOnInput, syntaxHighlighting } from '@codemirror/language';
import { lintGutter, lintKeymap, setDiagnostics } from '@codemirror/lint';
import { highlightSelectionMatches, searchKeymap } from '@codemirror/search';
import { EditorState } from '@codemirror/state';
import { EditorView, highlightActiveLine, highlightActiveLineGutter, hoverTooltip, keymap, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { keysAt, placeIn, wordsAt } from './schema.js';
import { settingValue, settling, stepsOf } from './writing.js';

const word = /[\w.-]*$/;

const colours = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--mark)', fontWeight: '600' },
  { tag: tags.comment, color: 'var(--soft)', fontStyle: 'italic' },
  { tag: [tags.string, tags.special(tags.string)], color: 'var(--good)' },
  { tag: [tags.punctuation, tags.separator, tags.bracket, tags.squareBracket, tags.brace], color: 'var(--soft)' },
]);

const theme = EditorView.theme({
  '&': { color: 'var(--ink)', backgroundColor: 'var(--sheet)', fontSize: '.86rem' },
  '&.cm-focused': { outline: '3px solid var(--mark)' },
  '.cm-scroller': { fontFamily: 'ui-monospace, monospace', lineHeight: '1.5' },
  '.cm-content': { caretColor: 'var(--ink)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': { backgroundColor: 'var(--paper)', color: 'var(--soft)', borderRight: '1px solid var(--line)' },
  '.cm-activeLine, .cm-activeLineGutter': { backgroundColor: 'var(--note-back)' },
  '.cm-tooltip, .cm-panels': { backgroundColor: 'var(--sheet)', color: 'var(--ink)', borderColor: 'var(--soft)' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li[aria-selected]': { backgroundColor: 'var(--mark)', color: 'var(--mark-ink)' },
  '.cm-tooltip p, .cm-completionInfo': { margin: 0, padding: '.3rem .6rem', maxWidth: '24rem' },
});

// What may be written where the cursor stands.
function completions(schema, names) {
  return (context) => {
    const before = context.matchBefore(word);
    const { path, isKey } = placeIn(context.state.doc.toString(), before.from);
    if (before.from === before.to && !context.explicit) return null;
    // A name that looks like a number is a text: 5050 would be read as one, but so would 0603 as 603.
    const isQuoted = /["']/.test(context.state.sliceDoc(before.from - 1, before.from));
    const written = (label) => (/^[\d.]+$/.test(label) && !isQuoted ? `"${label}"` : label);
    const options = isKey
      ? [...keysAt(schema, path)].map(([label, info]) => ({ label, info, apply: `${label}: ` }))
      : wordsAt(schema, path, names).map((label) => ({ label, apply: written(label) }));
    return options.length > 0 ? { from: before.from, options, validFor: /^[\w.-]*$/ } : null;
  };
}

function meanings(schema) {
  return hoverTooltip((view, at) => {
    const range = view.state.wordAt(at);
    if (!range) return null;
    const line = view.state.doc.lineAt(at);
    const from = range.from - word.exec(view.state.sliceDoc(line.from, range.from))[0].length;
    const name = view.state.sliceDoc(from, range.to) + /^[\w.-]*/.exec(view.state.sliceDoc(range.to, line.to))[0];
    const { path, isKey } = placeIn(view.state.doc.toString(), from);
    const meaning = isKey ? keysAt(schema, path).get(name) : null;
    if (!meaning) return null;
    return {
      pos: from,
      end: from + name.length,
      create: () => {
        const dom = document.createElement('div');
        dom.append(Object.assign(document.createElement('p'), { textContent: meaning }));
        return { dom };
      },
    };
  });
}

// engine: who is asked. onDraft(text or null, text): the text has changed; null when it is the file's again.
export async function openEditor({ ask, silent }, onDraft) {
  const state = document.getElementById('file-state');
  const save = document.getElementById('save-file');
  const clash = document.getElementById('file-clash');
  const [file, schema, { names }] = await Promise.all(['/file', '/schema', '/names'].map(async (path) => (await ask(path)).json()));
  // A file that is begun is written by the first save.
  let saved = file.text ?? '';
  let stamp = file.stamp;
  const view = new EditorView({
    parent: document.getElementById('editor'),
    state: EditorState.create({
      doc: saved,
      extensions: [
        ...(saved.includes('\r\n') ? [EditorState.lineSeparator.of('\r\n')] : []),
        lineNumbers(), highlightActiveLine(), highlightActiveLineGutter(), history(), indentOnInput(), bracketMatching(), closeBrackets(),
        highlightSelectionMatches(), yaml(), syntaxHighlighting(colours), lintGutter(), meanings(schema),
        autocompletion({ override: [completions(schema, names)], icons: false }), theme,
        EditorView.darkTheme.of(matchMedia('(prefers-color-scheme: dark)').matches),
        EditorView.contentAttributes.of({ 'aria-label': 'The board file', spellcheck: 'false', tabindex: '0' }),
        EditorView.updateListener.of((update) => { if (update.docChanged) changed(); }),
        keymap.of([
          { key: 'Mod-s', preventDefault: true, run: () => { write(); return true; } },
          ...closeBracketsKeymap, ...defaultKeymap, ...searchKeymap, ...historyKeymap, ...completionKeymap, ...lintKeymap,
        ]),
      ],
    }),
  });
  const text = () => view.state.sliceDoc();
  const isChanged = () => text() !== saved;

  function tell() {
    save.disabled = !isChanged();
    state.textContent = isChanged() ? 'Not saved yet.' : stamp === '' ? 'A new file.' : 'As saved.';
  }

  function changed() {
    tell();
    onDraft(isChanged() ? text() : null, view.state.doc.toString());
  }

  function replace(with_) {
    const lines = view.state.toText(with_);
    view.dispatch({
      changes: { from: 0, to: view.state.doc.length, insert: lines },
      selection: { anchor: Math.min(view.state.selection.main.head, lines.length) },
    });
  }

  // The notice of a save may come before its answer.
  let writing = Promise.resolve();
  function write() {
    if (isChanged()) writing = writing.then(send);
  }

  async function send() {
    const mine = text();
    let answer;
    try {
      answer = await ask(`/file?${new URLSearchParams({ stamp })}`, mine);
    } catch {
      state.textContent = `Not saved. ${silent} Copy your text before you close this page.`;
      return;
    }
    if (answer.ok) {
      ({ stamp } = await answer.json());
      saved = mine;
      clash.hidden = true;
      changed();
    } else if (answer.status === 409) tellClash(await answer.json());
    else state.textContent = `Not saved: ${await answer.text()}`;
  }

  // Somebody else wrote the file while there was typing here: neither is lost, a person decides.
  let theirs = null;
  function tellClash(other) {
    theirs = other;
    clash.querySelector('p').textContent = other.text === null
      ? 'The file is gone from its folder. Your text stands here.'
      : 'The file was changed by another program while you typed here.';
    document.getElementById('take-theirs').hidden = other.text === null;
    clash.hidden = false;
  }
  document.getElementById('take-theirs').addEventListener('click', () => {
    [saved, stamp] = [theirs.text, theirs.stamp];
    clash.hidden = true;
    replace(saved);
    changed();
    view.focus();
  });
  document.getElementById('keep-mine').addEventListener('click', () => {
    stamp = theirs.stamp;
    saved = theirs.text ?? '';
    clash.hidden = true;
    changed();
    view.focus();
  });

  save.addEventListener('click', write);
  addEventListener('beforeunload', (event) => { if (isChanged()) event.preventDefault(); });
  tell();

  return {
    view,
    // Values by their paths, written into the text.
    put(values) {
      for (const [path, value] of values) {
        view.dispatch({ changes: settingValue(view.state.doc.toString(), stepsOf(path), value), userEvent: 'input' });
      }
    },
    // Another text in place of all, to be taken back with one undo.
    take(whole) {
      view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: view.state.toText(whole) }, selection: { anchor: 0 },
        userEvent: 'input.import', annotations: isolateHistory.of('full'), scrollIntoView: true });
    },
    // A question of the text is settled: its line goes, the values come.
    settle(question, values) {
      const changes = settling(view.state.doc.toString(), question, values);
      if (changes) view.dispatch({ changes, userEvent: 'input', annotations: isolateHistory.of('full') });
      return changes !== null;
    },
    text: () => view.state.doc.toString(),
    // The file was saved, here or elsewhere.
    async fileChanged() {
      await writing;
      const now = await (await ask('/file')).json();
      if (now.stamp === stamp) return;
      if (isChanged() || now.text === null) { tellClash(now); return; }
      [saved, stamp] = [now.text, now.stamp];
      replace(saved);
    },
    mark(mistakes) {
      const marks = mistakes.filter(({ line }) => line > 0 && line <= view.state.doc.lines).map(({ line, column, text: message }) => {
        const { from, to } = view.state.doc.line(line);
        const at = Math.min(from + Math.max(column - 1, 0), to);
        const end = at + (/^[^\s,{}[\]]*/.exec(view.state.sliceDoc(at, to))[0].length || 1);
        return { from: at, to: Math.min(end, Math.max(to, at)), severity: 'error', message: message.replace(/^[^ ]*:\d+:\d+: /, '') };
      });
      view.dispatch(setDiagnostics(view.state, marks));
    },
  };
}
