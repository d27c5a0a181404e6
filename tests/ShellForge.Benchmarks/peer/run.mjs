// The peer on the same workload: node run.mjs DIR REPS WARM-SECONDS PART... (0 seconds: cold, every run counts)   One JSON line a part: median milliseconds of the booleans alone.
import Module from 'manifold-3d';
import fs from 'node:fs';
const [, , dir, reps = '15', warm = '0', ...names] = process.argv;
const wasm = await Module();
wasm.setup();
const { Manifold, Mesh } = wasm;
const data = fs.openSync(`${dir}/workload.bin`);
const place = new Map();
const parts = [];
for (const line of fs.readFileSync(`${dir}/workload.txt`, 'utf8').split('\n')) {
  const w = line.split(' ').filter(x => x);
  if (w[0] === 'mesh') place.set(+w[1], { nv: +w[2], nt: +w[3], v: +w[4], t: +w[5] });
  else if (w[0] === 'part') parts.push({ name: w[1], steps: [] });
  else if (w.length) parts.at(-1).steps.push([w[0], w.slice(2).map(Number)]);
}
function load(id) {
  const m = place.get(id);
  const v = new Float64Array(m.nv * 3), t = new Uint32Array(m.nt * 3);
  fs.readSync(data, v, 0, v.byteLength, m.v);
  fs.readSync(data, t, 0, t.byteLength, m.t);
  const solid = new Manifold(new Mesh({ numProp: 3, vertProperties: Float32Array.from(v), triVerts: Uint32Array.from(t) }));
  solid.numTri();
  return solid;
}
// The resource usage of a process counts what its parent had before it was born; this file does not.
const peak = () => fs.existsSync('/proc/self/status')
  ? +/VmHWM:\s*(\d+)/.exec(fs.readFileSync('/proc/self/status', 'utf8'))[1] / 1024 : process.resourceUsage().maxRSS / 1024;
const median = a => { a = [...a].sort((x, y) => x - y); return a.length & 1 ? a[a.length >> 1] : (a[a.length / 2 - 1] + a[a.length / 2]) / 2; };
for (const part of parts.filter(p => names.length === 0 || names.includes(p.name))) {
  const times = [];
  let triangles = 0, volume = 0;
  const started = performance.now();
  for (let i = 0; times.length < +reps; i++) {
    const isWarm = +warm === 0 || (i >= 3 && performance.now() - started >= 1000 * warm);
    const solids = new Map();
    for (const [, ids] of part.steps) for (const id of ids) solids.set(id, load(id));
    const start = performance.now();
    let result = null, own = false;
    for (const [operation, ids] of part.steps) {
      if (operation === '=') { result = solids.get(ids[0]); continue; }
      const list = [result, ...ids.map(id => solids.get(id))];
      const next = operation === '+' ? Manifold.union(list) : Manifold.difference(list);
      if (own) result.delete();
      result = next;
      own = true;
    }
    triangles = result.numTri();
    const time = performance.now() - start;
    if (isWarm) times.push(time);
    volume = result.volume();
    if (own) result.delete();
    for (const solid of solids.values()) solid.delete();
  }
  console.log(JSON.stringify({ part: part.name, ms: +median(times).toFixed(3), triangles, volume, peakMb: peak() }));
}
