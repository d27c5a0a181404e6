// What the board file's schema says of a place in its text.

const keyAhead = /^("[^"]*"|'[^']*'|[^\s#:{}[\],&*!|>'"%@`-][^:#{}[\],]*):(?=\s|$)/;

// Where a place stands: the keys that lead there ('[]' for an entry of a list), and whether a key or a value comes next.
export function placeIn(text, at) {
  const blocks = [];
  const flows = [];
  let afterKey = false;
  for (const line of text.slice(0, at).split('\n')) {
    let rest = line;
    if (flows.length === 0) {
      afterKey = false;
      let indent = line.length - line.trimStart().length;
      rest = line.slice(indent);
      if (rest.startsWith('#')) continue;
      const opensEntry = /^-(\s|$)/.test(rest);
      // A list may stand as far left as the key that it belongs to.
      const isOver = (block) => block.indent > indent || (block.indent === indent && (!opensEntry || block.key === '[]'));
      while (blocks.length > 0 && isOver(blocks.at(-1))) blocks.pop();
      for (let entry; (entry = /^-(\s+|$)/.exec(rest)); rest = rest.slice(entry[0].length)) {
        blocks.push({ indent, key: '[]' });
        indent += entry[0].length;
      }
      const key = keyAhead.exec(rest);
      if (key) {
        blocks.push({ indent, key: bare(key[1]) });
        rest = rest.slice(key[0].length);
        afterKey = true;
      }
    }
    scanFlow(rest, flows);
  }
  const path = blocks.map(({ key }) => key);
  for (const flow of flows) path.push(...(flow.list ? ['[]'] : flow.key === null ? [] : [flow.key]));
  const inMap = flows.length > 0 && !flows.at(-1).list;
  return { path, isKey: inMap ? flows.at(-1).key === null : flows.length === 0 && !afterKey };
}

function bare(key) {
  return /^["']/.test(key) ? key.slice(1, -1) : key.trim();
}

// Braces and brackets, within one line or over several.
function scanFlow(text, flows) {
  let word = '';
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    const top = flows.at(-1);
    if (sign === '#' && (i === 0 || /\s/.test(text[i - 1]))) return;
    if (sign === '"' || sign === "'") {
      const end = text.indexOf(sign, i + 1);
      if (end < 0) return;
      word += text.slice(i, end + 1);
      i = end;
    } else if (sign === '{' || sign === '[') {
      flows.push({ list: sign === '[', key: null });
      word = '';
    } else if (sign === '}' || sign === ']') {
      flows.pop();
      word = '';
    } else if (top && sign === ',') {
      top.key = null;
      word = '';
    } else if (top && !top.list && sign === ':' && /^(\s|$)/.test(text.slice(i + 1, i + 2))) {
      top.key = bare(word.trim());
      word = '';
    } else word += sign;
  }
}

// All forms that a value may take there.
function formsAt(schema, path) {
  let forms = spread(schema);
  for (const step of path) {
    forms = forms.flatMap((form) => (step === '[]' ? form.items : form.properties?.[step]) ?? []).flatMap(spread);
  }
  return forms;
}

function spread(form) {
  return [form, ...[...(form.anyOf ?? []), ...(form.oneOf ?? []), ...(form.allOf ?? [])].flatMap(spread)];
}

// The keys that can stand at a place, with what each means.
export function keysAt(schema, path) {
  const keys = new Map();
  for (const form of formsAt(schema, path)) {
    for (const [name, value] of Object.entries(form.properties ?? {})) if (!keys.has(name)) keys.set(name, value.description ?? '');
  }
  return keys;
}

// The words that a value can be; names: those of profiles, by kind.
export function wordsAt(schema, path, names) {
  const words = formsAt(schema, path).flatMap((form) => [...(form.enum ?? []), ...('const' in form ? [form.const] : []),
    ...(form.type === 'boolean' ? [true, false] : []), ...(names[form.$comment?.replace(/^the name of /, '')] ?? [])]);
  return [...new Set(words.map(String))];
}
