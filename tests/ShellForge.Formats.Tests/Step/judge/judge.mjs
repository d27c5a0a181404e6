// Reads STEP files as CAD programs do and says what they hold: faces, volume of the bodies, edges that only one face has.
// usage: node judge.mjs FILE...
import { readFileSync } from 'node:fs';
import occtImport from 'occt-import-js';

const finest = { linearUnit: 'millimeter', linearDeflectionType: 'absolute_value', linearDeflection: 0.0005, angularDeflection: 0.05 };
const occt = await occtImport();
for (const file of process.argv.slice(2)) {
  const read = occt.ReadStepFile(new Uint8Array(readFileSync(file)), finest);
  let volume = 0;
  let faces = 0;
  let open = 0;
  for (const mesh of read.meshes) {
    const place = mesh.attributes.position.array;
    const index = mesh.index.array;
    const at = (i) => [place[3 * i], place[3 * i + 1], place[3 * i + 2]];
    const key = (i) => at(i).map((x) => Math.round(x * 2000)).join();
    const edges = new Map();
    faces += mesh.brep_faces.length;
    for (let t = 0; t < index.length; t += 3) {
      const [a, b, c] = [at(index[t]), at(index[t + 1]), at(index[t + 2])];
      volume += (a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
      for (let k = 0; k < 3; k++) {
        const from = key(index[t + k]);
        const to = key(index[t + (k + 1) % 3]);
        if (from !== to) {
          const back = edges.get(`${to}|${from}`) ?? 0;
          if (back > 0) edges.set(`${to}|${from}`, back - 1);
          else edges.set(`${from}|${to}`, (edges.get(`${from}|${to}`) ?? 0) + 1);
        }
      }
    }
    for (const count of edges.values()) open += count;
  }
  console.log(`${read.success} ${read.meshes.length} ${faces} ${open} ${volume}`);
}
