// What the board file still leaves open, asked one after the other beside a picture of the board.

const make = (tag, properties, ...children) => {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
};

// engine: who is asked. editor: writes answers into the text.
export function askOpenQuestions({ ask }, editor) {
  const section = document.getElementById('questions');
  const form = document.getElementById('question-form');
  const holder = document.getElementById('question-picture');
  let questions = [];
  let at = 0;
  let asked = 0;

  async function refresh(text) {
    const mine = ++asked;
    if (!text.includes('# TODO ')) {
      questions = [];
      show();
      return;
    }
    const answer = await ask('/questions', text);
    if (mine !== asked || !answer.ok) return;
    const known = questions[at]?.path;
    ({ questions } = await answer.json());

    // The text may have changed above the one that is being answered.
    const same = questions.findIndex(({ path }) => path === known);
    if (same >= 0 && same === at && form.dataset.path === known) {
      head();
      return;
    }
    at = same >= 0 ? same : Math.min(at, Math.max(questions.length - 1, 0));
    show();
  }

  function head() {
    document.getElementById('questions-title').textContent = `Still to say: ${at + 1} of ${questions.length}`;
  }

  function show() {
    section.hidden = questions.length === 0;
    if (section.hidden) {
      form.dataset.path = '';
      mark([]);
      return;
    }
    const question = questions[at];
    form.dataset.path = question.path;
    head();
    document.getElementById('question-what').textContent = sentence(question.what);
    document.getElementById('question-line').textContent = `Line ${question.line}: ${question.path}`;
    document.getElementById('question-fields').replaceChildren(...question.fields.map(field));
    form.querySelector('[type=submit]').hidden = question.fields.length === 0;
    document.getElementById('question-later').hidden = questions.length < 2;
    mark([question.part, ...question.others, ...question.fields.flatMap(({ choices }) => choices.map(({ part }) => part))].filter(Boolean));
  }

  const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);

  // Few choices are buttons, many a list to type into.
  function field({ label, unit, choices }, number) {
    const id = `question-${number}`;
    const input = make('input', { id, type: 'text', autocomplete: 'off', size: unit ? 8 : 34 });
    if (unit) input.inputMode = 'decimal';
    const parts = [make('label', { htmlFor: id, textContent: unit ? `${label}, ${unit}` : label }), input];
    if (choices.length > 8) {
      input.setAttribute('list', `${id}-choices`);
      parts.push(make('datalist', { id: `${id}-choices` }, ...choices.map(({ value }) => make('option', { value }))));
    } else {
      parts.push(make('span', { className: 'choices' }, ...choices.map(({ value, label: words, part }) => make('button', {
        type: 'button', className: 'plain small', textContent: words, onclick: () => { input.value = value; mark(part ? [part] : []); },
      }))));
    }
    return make('p', {}, ...parts);
  }

  // In the picture, what is asked for stands out; a part that is a choice can be picked there.
  function mark(references) {
    for (const body of holder.querySelectorAll('[data-ref]')) body.classList.toggle('asked', references.includes(body.dataset.ref));
  }

  holder.addEventListener('click', (event) => {
    const reference = event.target.closest('[data-ref]')?.dataset.ref;
    if (!reference || questions.length === 0) return;
    questions[at].fields.forEach(({ choices }, number) => {
      const choice = choices.find(({ part }) => part === reference);
      if (choice) {
        document.getElementById(`question-${number}`).value = choice.value;
        mark([reference]);
      }
    });
  });

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const question = questions[at];
    const values = question.fields
      .map((each, number) => ({ ...each, value: document.getElementById(`question-${number}`).value.trim() }))
      .filter(({ value }) => value !== '')
      .map(({ path, value, instead, isList }) => ({ path, instead, value: isList && !value.startsWith('[') ? `[${value}]` : value }));
    if (values.length === 0) {
      document.getElementById('question-0')?.focus();
      return;
    }
    const others = question.others.flatMap((other) => values.map((each) => ({ ...each, path: each.path.replace(`[${question.part}]`, `[${other}]`) })));
    if (!editor.settle(question, [...values, ...others])) {
      document.getElementById('question-line').textContent = `The file has no place for it: ${values[0].path}`;
    }
  });
  document.getElementById('question-stands').addEventListener('click', () => editor.settle(questions[at], []));
  document.getElementById('question-later').addEventListener('click', () => {
    at = (at + 1) % questions.length;
    show();
  });

  return {
    refresh,
    picture(svg) {
      const drawn = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
      drawn.setAttribute('role', 'img');
      drawn.setAttribute('aria-label', 'The board from both sides');
      holder.replaceChildren(document.importNode(drawn, true));
      show();
    },
  };
}
