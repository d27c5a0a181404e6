// Brings the page to life. Everything that can be read is in it without this script.
import { unpackMesh } from './unpack.js';
import { Viewer } from './viewer.js';
import { Pins } from './pins.js';
import { keepingSheet, wireSheets } from './sheets.js';

const $ = (id) => document.getElementById(id);
const still = matchMedia('(prefers-reduced-motion: reduce)').matches;

function readData(root) {
  const holder = root.getElementById('housing-data');
  return holder ? JSON.parse(holder.textContent) : null;
}

async function bodies(data) {
  return Promise.all(data.bodies.map(async (body) => ({ ...body, positions: await unpackMesh(body.mesh) })));
}

function wireControls(viewer, getData) {
  const section = () => {
    const axis = $('cut-axis').value;
    $('cut-place').disabled = axis === 'none';
    const size = viewer.bounds;
    if (axis === 'none') { viewer.section(null, 0); return; }
    const low = size.min[axis];
    const high = size.max[axis];
    viewer.section(axis, low + (high - low) * Number($('cut-place').value));
  };
  $('explode').addEventListener('input', (e) => viewer.explode(Number(e.target.value)));
  $('cut-axis').addEventListener('change', section);
  $('cut-place').addEventListener('input', section);
  for (const button of document.querySelectorAll('[data-stand]')) {
    button.addEventListener('click', () => viewer.lookFrom(button.dataset.stand));
  }
  $('show-parts').addEventListener('change', (e) => viewer.show(e.target.value, e.target.checked));
  $('glow')?.addEventListener('change', (e) => viewer.glow(e.target.checked ? getData().light : null));
  $('canvas').addEventListener('keydown', (e) => {
    const moves = {
      ArrowLeft: [-8, 0, 1], ArrowRight: [8, 0, 1], ArrowUp: [0, -6, 1], ArrowDown: [0, 6, 1],
      '+': [0, 0, 0.9], '=': [0, 0, 0.9], '-': [0, 0, 1.1],
    };
    if (e.key === 'Home') viewer.lookFrom('front');
    else if (moves[e.key]) viewer.nudge(...moves[e.key]);
    else return;
    e.preventDefault();
  });
  return section;
}

// A page that is not checked yet tells only what it shows; all else stays as it was until the rules are through.
function swapSections(fresh, isTried) {
  const whole = fresh.getElementById('live-state').dataset.checked === 'yes';
  const known = new Set([...fresh.querySelectorAll('[data-refresh]')].map((block) => block.id));
  for (const other of fresh.querySelectorAll('[data-refresh]')) {
    if (!whole && other.id !== 'head' && other.id !== 'findings') continue;
    const block = $(other.id);
    if (other.id === 'facts') { compareFacts(block, other, isTried); continue; }
    if (block) {
      const unfolded = [...block.querySelectorAll('details')].map((details) => details.open);
      block.replaceChildren(...other.childNodes);
      block.querySelectorAll('details').forEach((details, i) => { details.open = unfolded[i] ?? false; });
    }
    else document.querySelector('main').append(other);
  }
  if (!whole) return;
  for (const block of document.querySelectorAll('[data-refresh]')) if (!known.has(block.id)) block.remove();
}

// The file's own figures, and beside each the one with the numbers that are tried.
let ownFacts = new Map();
function compareFacts(block, fresh, isTried) {
  const values = new Map([...fresh.children].map((row) => [row.children[0].textContent, row.children[1].textContent]));
  block.replaceChildren(...fresh.childNodes);
  if (!isTried) { ownFacts = values; return; }
  for (const row of block.children) {
    const own = ownFacts.get(row.children[0].textContent);
    const now = row.children[1].textContent;
    if (own !== undefined && own !== now) {
      row.children[1].textContent = `${own} \u2192 ${now}`;
      row.classList.add('changed');
    }
  }
}

// Another closure or light may bring other parts: their boxes are made anew, ticked as their names were.
function swapTicks(fresh) {
  const mine = $('show-parts');
  const other = fresh.getElementById('show-parts');
  const hidden = [...mine.querySelectorAll('input:not(:checked)')].map((input) => input.value);
  mine.replaceChildren(...other.childNodes);
  for (const input of mine.querySelectorAll('input')) input.checked = !hidden.includes(input.value);
}

function pick(viewer, pins, finding) {
  pins.mark(null);
  viewer.flyTo(finding.at, still);
  for (const row of document.querySelectorAll('.finding')) row.classList.toggle('picked', row.id === `finding-${finding.number}`);
  $(`finding-${finding.number}`)?.scrollIntoView({ block: 'nearest', behavior: still ? 'auto' : 'smooth' });
  $('view-status').textContent = `Looking at finding ${finding.number}: ${finding.message} The plastic is glassy until you choose a view.`;
}

// The housing in space; null where the browser can't draw it.
async function openStage(getData) {
  try {
    let pins;
    const viewer = new Viewer($('canvas'), () => pins?.place());
    pins = new Pins($('pins'), viewer, (finding) => pick(viewer, pins, finding));
    viewer.setParts(await bodies(getData()), true);
    pins.set(getData().findings);
    const section = wireControls(viewer, getData);
    document.body.addEventListener('click', (e) => {
      const place = e.target.closest?.('[data-place]')?.dataset.place;
      if (place) {
        $('view').scrollIntoView({ block: 'nearest' });
        viewer.flyTo(place.split(' ').map(Number), still);
        pins.mark(place.split(' ').map(Number));
      }
      const number = e.target.closest?.('[data-fly]')?.dataset.fly;
      const finding = number && getData().findings.find((f) => String(f.number) === number);
      if (finding) { $('view').scrollIntoView({ block: 'nearest' }); pick(viewer, pins, finding); }
    });
    $('view').classList.add('ready');
    document.documentElement.dataset.view = 'ready';
    return { viewer, pins, section };
  } catch (error) {
    $('view-status').textContent = 'This browser cannot draw in 3D; the drawings below show the same housing.';
    $('view').classList.add('flat');
    document.documentElement.dataset.view = 'flat';
    console.warn(error);
    return null;
  }
}

// follow: what keeps a page that the command serves up to date.
export async function start(follow) {
  wireSheets();
  let data = readData(document);
  if (!data || !$('canvas')) return;
  const stage = await openStage(() => data);
  window.housing = { viewer: stage?.viewer };
  follow?.(async (fresh, isTried) => {
    const last = data;
    data = readData(fresh);
    keepingSheet(() => swapSections(fresh, isTried));
    if (!stage) return;
    swapTicks(fresh);
    const same = JSON.stringify(last.bodies) === JSON.stringify(data.bodies);
    if (!same) {
      stage.viewer.setParts(await bodies(data), last.bodies.length === 0);
      stage.section();
    }
    stage.pins.set(data.findings);
    // Until the rules are through, the light is the last one's.
    if (fresh.getElementById('live-state').dataset.checked !== 'yes') data.light ??= last.light;
    $('light-switch').hidden = !data.light;
    await stage.viewer.glow($('glow').checked ? data.light : null);
  });
}
