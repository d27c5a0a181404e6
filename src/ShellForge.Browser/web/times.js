// How long a housing still takes, from what it has taken here: nothing is said before something was measured on this machine.
const storeName = 'shellforge-times';

// Shares of the whole, measured on the plain runtime with the project's own housings; files are made when they are asked for.
const shares = { Plan: 0.16, Parts: 0.14, Show: 0.01, Checks: 0.64, Page: 0.05 };
const words = {
  Plan: 'Deciding every dimension',
  Parts: 'Computing the parts',
  Show: 'Drawing the housing',
  Checks: 'Checking what would go wrong',
  Page: 'Drawing, writing, counting',
  Files: 'Writing the files',
};

const stored = () => {
  try { return JSON.parse(localStorage.getItem(storeName)) ?? {}; } catch { return {}; }
};

export const lastWhole = () => {
  const last = stored();
  return Object.keys(shares).every((stage) => last[stage] > 0) ? Object.keys(shares).reduce((sum, stage) => sum + last[stage], 0) : null;
};

export function clock(now = () => performance.now()) {
  let done = new Map();
  let stage = null;
  let since = 0;
  let began = 0;

  function close() {
    if (stage) done.set(stage, (done.get(stage) ?? 0) + now() - since);
  }

  return {
    get stage() { return stage; },
    begin(next) {
      close();
      if (!stage || next === 'Plan') {
        began = now();
        done = next === 'Plan' ? new Map() : done;
      }
      stage = next;
      since = now();
    },
    // All is through: what was measured is kept for the next time.
    end() {
      close();
      stage = null;
      try { localStorage.setItem(storeName, JSON.stringify({ ...stored(), ...Object.fromEntries(done) })); } catch { /* No store, no memory. */ }
    },
    drop() { stage = null; done = new Map(); },
    told() {
      const elapsed = now() - began;
      const left = Object.keys(shares).filter((each) => !done.has(each));
      const last = stored();
      const isKnown = left.every((each) => last[each] > 0);
      const measured = [...done].filter(([each]) => shares[each]);
      const sum = (stages, of) => stages.reduce((all, each) => all + of(each), 0);
      const seconds = (ms) => `${Math.max(1, Math.round(ms / 1000))} s`;
      let rest = null;
      if (shares[stage] && (measured.length > 0 || isKnown)) {
        const of = isKnown ? (each) => last[each] : (each) => shares[each];
        const ratio = measured.length > 0 ? sum(measured, ([, ms]) => ms) / sum(measured, ([each]) => of(each) || 1) : 1;
        rest = Math.max(0, ratio * sum(left, of) - (now() - since));
      }
      const spent = shares[stage] ? elapsed : now() - since;
      return {
        words: `${words[stage]}: ${seconds(spent)} so far${rest === null ? '' : rest < 1000 ? ', nearly through' : `, about ${seconds(rest)} more`}`,
        share: rest === null ? null : spent / (spent + rest),
      };
    },
  };
}
