// The peer on trees of meshes: node differential.mjs TREES.bin DIR   Writes DIR/peer-N.stl and prints one JSON line a tree.
// A tree is a count of steps, then for each: 1 unite or 0 cut, vertices, triangles (uint32), x y z (float64), corners (uint32); little-endian.
import Module from 'manifold-3d';
import fs from 'node:fs';
const [, , file, dir] = process.argv;
const wasm = await Module();
wasm.setup();
const { Manifold, Mesh } = wasm;
const data = fs.readFileSync(file);
let at = 0;
const number = () => { at += 4; return data.readUInt32LE(at - 4); };
function body() {
  const nv = number(), nt = number();
  const v = new Float32Array(3 * nv), t = new Uint32Array(3 * nt);
  for (let i = 0; i < v.length; i++, at += 8) v[i] = data.readDoubleLE(at);
  for (let i = 0; i < t.length; i++) t[i] = number();
  return new Manifold(new Mesh({ numProp: 3, vertProperties: v, triVerts: t }));
}
for (let tree = 0; at < data.length; tree++) {
  let result = null;
  for (let steps = number(); steps > 0; steps--) {
    const unites = number() === 1, next = body();
    result = result === null ? next : unites ? result.add(next) : result.subtract(next);
  }
  const mesh = result.getMesh(), count = mesh.numTri, stl = Buffer.alloc(84 + 50 * count);
  stl.writeUInt32LE(count, 80);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < 3; j++) {
      for (let c = 0; c < 3; c++) {
        stl.writeFloatLE(mesh.vertProperties[mesh.triVerts[3 * i + j] * mesh.numProp + c], 84 + 50 * i + 12 + 12 * j + 4 * c);
      }
    }
  }
  fs.writeFileSync(`${dir}/peer-${tree}.stl`, stl);
  console.log(JSON.stringify({ tree, volume: result.volume(), status: result.status() }));
}
