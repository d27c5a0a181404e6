// Meshes travel as lattice counts: zigzag varints of differences, deflated, base64. One step is 2^-16 mm.
const STEP = 1 / 65536;

async function inflate(base64) {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

function varints(bytes, start, count) {
  const values = new Int32Array(count);
  let at = start;
  for (let i = 0; i < count; i++) {
    let shift = 0;
    let value = 0;
    let byte;
    do {
      byte = bytes[at++];
      value |= (byte & 127) << shift;
      shift += 7;
    } while (byte & 128);
    values[i] = (value >>> 1) ^ -(value & 1);
  }
  return { values, end: at };
}

/** Positions (mm, three a triangle corner) of a packed mesh. */
export async function unpackMesh(packed) {
  const bytes = await inflate(packed.data);
  const corners = varints(bytes, 0, packed.vertices * 3);
  const indices = varints(bytes, corners.end, packed.triangles * 3);
  const places = new Float32Array(packed.vertices * 3);
  for (let axis = 0; axis < 3; axis++) {
    let sum = 0;
    for (let i = 0; i < packed.vertices; i++) {
      sum += corners.values[3 * i + axis];
      places[3 * i + axis] = sum * STEP;
    }
  }
  const positions = new Float32Array(packed.triangles * 9);
  let vertex = 0;
  for (let i = 0; i < indices.values.length; i++) {
    vertex += indices.values[i];
    positions.set(places.subarray(3 * vertex, 3 * vertex + 3), 3 * i);
  }
  return positions;
}
