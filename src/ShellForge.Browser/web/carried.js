// The page that carries everything within itself: the worker's source and the runtime's pieces, deflated; nothing of it in a folder.
async function unpacked(base64) {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

export async function carried() {
  const holders = [...document.querySelectorAll('script[type="text/plain"][data-piece]')];
  if (holders.length === 0) return null;
  const pieces = new Map(await Promise.all(holders.map(async (each) => [each.dataset.piece, await unpacked(each.textContent)])));
  const source = new TextDecoder().decode(pieces.get('engine.js'));
  for (const each of holders) each.remove();
  return { source, pieces };
}
