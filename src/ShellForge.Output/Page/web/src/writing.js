// A value put into the text of a board file, with everything else left as it stands.
import { yamlLanguage } from '@codemirror/lang-yaml';

// The change that gives a key its value: { from, to, insert }.
export function settingValue(text, path, value) {
  let map = firstMap(yamlLanguage.parser.parse(text).topNode.firstChild, text);
  for (let depth = 0; ; depth++) {
    const pair = map && pairsOf(map).find((each) => keyOf(each, text) === path[depth]);
    if (!pair) return entry(text, map, path.slice(depth), value);
    const held = valueOf(pair);
    if (depth === path.length - 1) {
      return held ? { from: held.from, to: held.to, insert: value } : { from: pair.to, to: pair.to, insert: ` ${value}` };
    }
    if (!held) return { from: pair.to, to: pair.to, insert: ` ${nested(path.slice(depth + 1), value)}` };
    if (!isMap(held)) return { from: held.from, to: held.to, insert: nested(path.slice(depth + 1), value) };
    map = held;
  }
}

const isMap = (node) => node.name === 'BlockMapping' || node.name === 'FlowMapping';

function firstMap(document, text) {
  for (let node = document?.firstChild; node; node = node.nextSibling) if (isMap(node)) return node;
  return text.trim() === '' ? null : document?.getChild('BlockMapping') ?? null;
}

const pairsOf = (map) => map.getChildren('Pair');
const keyOf = (pair, text) => {
  const key = pair.getChild('Key');
  return key ? text.slice(key.from, key.to).replace(/^(["'])(.*)\1$/, '$2') : null;
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
