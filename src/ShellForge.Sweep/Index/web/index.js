"use strict";
(() => {
  const rows = JSON.parse(document.getElementById("data").textContent);
  const table = document.getElementById("variants");
  const body = table.tBodies[0];
  const lines = [...body.rows];
  const make = (tag, text, attributes) => {
    const element = document.createElement(tag);
    if (text !== undefined) { element.textContent = text; }
    for (const [name, value] of Object.entries(attributes || {})) { element.setAttribute(name, value); }
    return element;
  };

  // Sorting: by what a cell shows, numbers as numbers, what is missing last.
  const value = (line, column) => {
    const text = (line.cells[column] ? line.cells[column].textContent : "").trim();
    const number = Number(text);
    return text === "" || text === "\u2013" ? null : Number.isNaN(number) ? text : number;
  };
  const sort = (column, down) => {
    const ordered = lines.slice().sort((a, b) => {
      const one = value(a, column), other = value(b, column);
      if (one === null || other === null) { return (one === null) - (other === null) || a.dataset.row - b.dataset.row; }
      const way = typeof one === "number" && typeof other === "number" ? one - other : String(one).localeCompare(String(other), "en");
      return (down ? -way : way) || a.dataset.row - b.dataset.row;
    });
    body.append(...ordered);
  };
  [...table.tHead.rows[0].cells].forEach((head, column) => {
    const button = make("button", undefined, { type: "button" });
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const down = head.getAttribute("aria-sort") === "ascending";
      for (const other of table.tHead.rows[0].cells) { other.removeAttribute("aria-sort"); }
      head.setAttribute("aria-sort", down ? "descending" : "ascending");
      sort(column, down);
    });
  });

  // Filtering: every word must stand somewhere in the line.
  const tools = document.getElementById("tools");
  const words = make("input", undefined, { type: "search", id: "words" });
  const wordsLabel = make("label", "Lines with ");
  wordsLabel.append(words);
  const verdict = make("select", undefined, { id: "verdict" });
  for (const [word, title] of [["", "any"], ["print", "print"], ["mind warnings", "mind warnings"], ["do not print", "do not print"], ["can't be made", "can't be made"]]) {
    verdict.append(make("option", title, { value: word }));
  }
  const verdictLabel = make("label", "verdict ");
  verdictLabel.append(verdict);
  const count = make("span", "", { class: "soft", role: "status" });
  tools.append(wordsLabel, verdictLabel, count);
  tools.hidden = false;
  const verdictOf = line => [...line.cells].find(cell => cell.className === "good" || cell.className === "warn" || cell.className === "stop")?.textContent;
  const filter = () => {
    const wanted = words.value.toLowerCase().split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const line of lines) {
      const text = line.textContent.toLowerCase();
      line.hidden = !(wanted.every(word => text.includes(word)) && (verdict.value === "" || verdictOf(line) === verdict.value));
      shown += line.hidden ? 0 : 1;
    }
    count.textContent = shown === lines.length ? "" : `${shown} of ${lines.length}`;
  };
  words.addEventListener("input", filter);
  verdict.addEventListener("change", filter);

  // Two side by side: ticked in the table, the last two count.
  const two = document.getElementById("two");
  const place = document.getElementById("two-body");
  let ticked = [];
  for (const line of lines) {
    const box = make("input", undefined, { type: "checkbox", "aria-label": `put ${rows[line.dataset.row].folder} beside another` });
    box.addEventListener("change", () => {
      ticked = ticked.filter(other => other !== box);
      if (box.checked) { ticked.push(box); }
      while (ticked.length > 2) { ticked.shift().checked = false; }
      show();
    });
    box.dataset.row = line.dataset.row;
    line.cells[0].prepend(box, " ");
  }
  tools.append(make("span", "Tick two to see them side by side.", { class: "soft" }));

  const listed = (title, pairs, first, second) => {
    if (pairs.length === 0) { return []; }
    const wide = make("div", undefined, { class: "wide", tabindex: "0", role: "region", "aria-label": title });
    const sheet = make("table");
    const head = make("tr");
    head.append(make("th", title), make("th", first), make("th", second));
    sheet.append(head);
    for (const [name, one, other] of pairs) {
      const row = make("tr");
      row.append(make("td", name), make("td", one), make("td", other));
      sheet.append(row);
    }
    wide.append(sheet);
    return [wide];
  };
  const differing = (a, b, name, text) => {
    const one = new Map(a.map(x => [name(x), text(x)])), other = new Map(b.map(x => [name(x), text(x)]));
    return [...new Set([...one.keys(), ...other.keys()])]
      .filter(key => one.get(key) !== other.get(key)).map(key => [key, one.get(key) ?? "\u2013", other.get(key) ?? "\u2013"]);
  };
  const show = () => {
    two.hidden = ticked.length < 2;
    place.replaceChildren();
    if (ticked.length < 2) { return; }
    const [a, b] = ticked.map(box => rows[box.dataset.row]);
    const cells = row => [...body.querySelector(`tr[data-row="${rows.indexOf(row)}"]`).cells];
    const titles = [...table.tHead.rows[0].cells].map(cell => cell.textContent);
    const figures = titles.map((title, i) => [title, cells(a)[i]?.textContent ?? "", cells(b)[i]?.textContent ?? ""]).slice(1).filter(([, one, other]) => one !== other);
    const names = make("p");
    names.append(make("span", "", { class: "swatch first" }), `${a.folder} `, make("span", "", { class: "swatch second" }), b.folder);
    place.append(names, ...listed("figures", figures, a.code, b.code));
    if (!a.housing || !b.housing) { return; }
    place.append(
      ...listed("decided", differing(a.housing.resolved, b.housing.resolved, x => x.name, x => x.text), a.code, b.code),
      ...listed("findings", differing(a.housing.findings, b.housing.findings, x => `${x.severity} ${x.rule}, ${x.subject}`, x => x.message), a.code, b.code),
      ...listed("to have at hand", differing(a.housing.shopping, b.housing.shopping, x => x.item, x => String(x.count)), a.code, b.code));
    if (body.querySelector("img")) {
      for (const [file, title] of [["section.svg", "Sections laid over each other"], ["plan.svg", "Plans laid over each other"]]) {
        const laid = make("div", undefined, { class: "laid" });
        for (const [row, order] of [[a, "first"], [b, "second"]]) {
          const tint = make("span", undefined, { class: order });
          tint.append(make("img", undefined, { src: `./${row.folder}/${file}`, alt: `${title}: ${row.code}` }));
          laid.append(tint);
        }
        place.append(make("h3", title), laid);
      }
    }
    two.scrollIntoView({ block: "nearest" });
  };
})();
