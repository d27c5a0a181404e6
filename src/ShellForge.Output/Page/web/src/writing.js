// A value put into the text of a board file, with everything else left as it stands.
import { yamlLanguage } from '@codemirror/lang-yaml';

// The steps of a path such as board.parts[J1].height: keys, and { entry } for what stands in brackets.
export const stepsOf = (path) => [...path.matchAll(/\[([^\]]*)\]|([^.[\]]+)/g)].map(([, entry, key]) => key ?? { entry });

// Remarks may stand before the document.
const treeOf = (text) => firstMap(yamlLanguage.parser.parse(text).topNode.getChild('Document'), text);
const pairOf = (map, key, text) => (map ? pairsOf(map).find((each) => keyOf(each, text) === key) : undefined);

// The change that gives a key its value: { from, to, insert }; null where no entry of a list has that name.
export function settingValue(text, path, value) {
  let map = treeOf(text);
  for (let depth = 0; ; depth++) {
    const pair = pairOf(map, path[depth], text);
    if (!pair) return path.slice(depth).every((step) => typeof step === 'string') ? entry(text, map, path.slice(depth), value) : null;
    let held = valueOf(pair);
    while (path[depth + 1]?.entry !== undefined) {
      held = held && entryNamed(held, path[++depth].entry, text);
      if (!held || depth === path.length - 1) return null;
    }
    if (depth === path.length - 1) {
      return held ? { from: held.from, to: held.to, insert: value } : { from: pair.to, to: pair.to, insert: ` ${value}` };
    }
    if (!held) return { from: pair.to, to: pair.to, insert: ` ${nested(path.slice(depth + 1), value)}` };
    if (!isMap(held)) return { from: held.from, to: held.to, insert: nested(path.slice(depth + 1), value) };
    map = held;
  }
}

// The change that takes a key out of the mapping that a path leads to, its value along; null where it does not stand there.
function leavingOut(text, path, key) {
  let node = treeOf(text);
  for (const step of path) node = node && (step.entry === undefined ? valueOf(pairOf(node, step, text) ?? node) : entryNamed(node, step.entry, text));
  const pairs = node && isMap(node) ? pairsOf(node) : [];
  const at = pairs.findIndex((each) => keyOf(each, text) === key);
  if (at < 0) return null;
  return at > 0 ? { from: pairs[at - 1].to, to: pairs[at].to, insert: '' } : { from: pairs[0].from, to: pairs[1]?.from ?? pairs[0].to, insert: '' };
}

// An entry of a list is known by its designator or its name, or by its number from 0.
function entryNamed(list, name, text) {
  const entries = list.getChildren('Item').map((item) => item.getChild('FlowMapping') ?? item.getChild('BlockMapping')).filter(Boolean);
  const isCalled = (map) => pairsOf(map).some((pair) => ['ref', 'name'].includes(keyOf(pair, text)) && bareText(valueOf(pair), text) === name);
  return entries.find(isCalled) ?? (/^\d+$/.test(name) ? entries[Number(name)] : null) ?? null;
}

const bareText = (node, text) => (node ? text.slice(node.from, node.to).replace(/^(["'])(.*)\1$/, '$2') : null);

const isMap = (node) => node.name === 'BlockMapping' || node.name === 'FlowMapping';

function firstMap(document, text) {
  for (let node = document?.firstChild; node; node = node.nextSibling) if (isMap(node)) return node;
  return text.trim() === '' ? null : document?.getChild('BlockMapping') ?? null;
}

const pairsOf = (map) => map.getChildren('Pair');
const keyOf = (pair, text) => {
  return bareText(pair.getChild('Key'), text);
};

// Behind the colon, comments left out.
function valueOf(pair) {
  let node = pair.getChild(':')?.nextSibling;
  while (node?.name === 'Comment') node = node.nextSibling;
  return node ?? null;
}

const nested = (path, value) => path.reduceRight((inner, key) => `{${key}: ${inner}}`, value);

function entry(text, map, path, value) {
  const line = `${path[0]}: ${path.length > 1 ? nested(path.slice(1), value) : value}`;
  const pairs = map ? pairsOf(map) : [];
  const last = pairs.at(-1);
  if (map?.name === 'FlowMapping') {
    return last ? { from: last.to, to: last.to, insert: `, ${line}` } : { from: map.from + 1, to: map.from + 1, insert: line };
  }
  if (!last) return { from: text.length, to: text.length, insert: `${text === '' || text.endsWith('\n') ? '' : '\n'}${line}\n` };
  const indent = pairs[0].from - (text.lastIndexOf('\n', pairs[0].from - 1) + 1);
  const end = text.indexOf('\n', last.to);
  const at = end < 0 ? text.length : end;
  return { from: at, to: at, insert: `\n${' '.repeat(indent)}${line}` };
}

const changed = (text, change) => (change ? text.slice(0, change.from) + change.insert + text.slice(change.to) : text);

// A text without the line that asks for a value, and with the values in their places: { from, to, insert }, one change for one undo.
// values: { path, value, instead }, the last a key beside it that can't stand there any more.
// question: { line, path }; its line may have moved since it was asked for. Null where the file has no place for a value.
export function settling(text, question, values) {
  const lines = text.split('\n');
  const asks = (each) => each.trimStart().startsWith(`# TODO ${question.path}: `);
  const at = lines.flatMap((each, i) => (asks(each) ? [i] : [])).sort((a, b) => Math.abs(a + 1 - question.line) - Math.abs(b + 1 - question.line))[0];
  if (at !== undefined) lines.splice(at, 1);
  let now = lines.join('\n');
  for (const { path, value, instead } of values) {
    const steps = stepsOf(path);
    if (instead) now = changed(now, leavingOut(now, steps.slice(0, -1), instead));
    const change = settingValue(now, steps, value);
    if (!change) return null;
    now = changed(now, change);
  }
  let from = 0;
  while (from < text.length && text[from] === now[from]) from++;
  let kept = 0;
  while (kept < Math.min(text.length, now.length) - from && text.at(-1 - kept) === now.at(-1 - kept)) kept++;
  return { from, to: text.length - kept, insert: now.slice(from, now.length - kept) };
}
