// The workshop without a server: the page of the command, answered by workers.
import { follow } from '../../ShellForge.Output/Page/web/src/follow.js';
import { start } from '../../ShellForge.Output/Page/web/src/page.js';
import beacon from '../../../out-samples/mooring-beacon/board.yaml';
import lamp from '../../../out-samples/tide-lamp/board.yaml';
import dial from '../../../out-samples/dome-dial/board.yaml';
import { local } from './local.js';
import { carried } from './carried.js';
import { clock, lastWhole } from './times.js';

const $ = (id) => document.getElementById(id);
const root = document.documentElement;
const examples = [['Mooring beacon', beacon], ['Tide lamp', lamp], ['Dome dial', dial]];

root.classList.add('loading');
const whole = lastWhole();
$('waiting').textContent = whole
  ? `The last housing took ${Math.round(whole / 1000)} s in this browser; how long the next one takes is shown while it is made.`
  : 'A housing takes a good part of a minute in a browser; how long on your machine is shown while it is made.';

// What is being done, for how long, and a way to stop it.
function progress() {
  const line = document.createElement('div');
  line.id = 'work';
  line.setAttribute('role', 'group');
  line.setAttribute('aria-label', 'Work in progress');
  line.innerHTML = '<progress id="work-bar" max="1" aria-label="Share of the work that is done"></progress><span id="work-told"></span> '
    + '<button type="button" class="plain small" id="work-stop">Stop</button>'
    + '<button type="button" class="plain small" id="work-again" hidden>Make it</button>';
  line.hidden = true;
  const time = clock();
  let ticking = 0;

  function tell() {
    const { words, share } = time.told();
    $('work-told').textContent = words;

    // A bar that runs to and fro would be drawn all the time, which the work would pay for.
    $('work-bar').value = share ?? 0;
  }

  function rest(isHidden) {
    time.drop();
    clearInterval(ticking);
    root.dataset.work = '';
    line.hidden = isHidden;
  }

  return {
    line,
    work(stage) {
      clearInterval(ticking);
      root.dataset.work = stage ?? '';
      if (stage === null) {
        if (time.stage) time.end();
        line.hidden = true;
        return;
      }
      time.begin(stage);
      line.hidden = false;
      for (const [id, isHidden] of [['work-bar', false], ['work-told', false], ['work-stop', false], ['work-again', true]]) $(id).hidden = isHidden;
      tell();
      ticking = setInterval(tell, 500);
    },
    dropped: () => rest(true),
    stopped() {
      rest(false);
      for (const id of ['work-bar', 'work-told', 'work-stop']) $(id).hidden = true;
      $('work-again').hidden = false;
    },
  };
}

async function open() {
  const shown = progress();
  const parts = (await carried()) ?? { base: new URL('.', location.href).href };
  const engine = local(parts, {
    loading([done, all]) { $('loading').textContent = `Loading the workshop: ${done} of ${all} pieces`; },
    work: shown.work,
    dropped: shown.dropped,
    written(text) {
      root.classList.remove('loading');
      $('loading').textContent = '';
      if (root.classList.contains('empty')) root.classList.toggle('begun', text.trim() !== '');
    },
  });
  await engine.ready;
  const page = new DOMParser().parseFromString(await (await engine.ask('/')).text(), 'text/html');
  for (const script of page.querySelectorAll('script:not([type="application/json"]), #page-script')) script.remove();
  $('bench').replaceChildren(...page.body.childNodes);
  $('bench').querySelector('.strip').append(shown.line);
  $('save-file').textContent = 'Save as a file';
  await start(follow(engine));
  $('work-stop').addEventListener('click', () => { engine.stop(); shown.stopped(); });
  $('work-again').addEventListener('click', () => engine.again());
  for (const [name, text] of examples) {
    const button = Object.assign(document.createElement('button'), { type: 'button', className: 'plain', textContent: name });
    button.addEventListener('click', () => engine.take(text));
    $('examples').append(button, ' ');
  }
  window.workshop = engine;
  if (!parts.pieces) await navigator.serviceWorker?.register('offline.js').catch(() => {});
}

open().catch((error) => {
  console.error(error);
  $('loading').className = 'live broken';
  $('loading').textContent = 'The workshop does not start in this browser; it needs WebAssembly and workers, as every browser of the last years has them.';
});
