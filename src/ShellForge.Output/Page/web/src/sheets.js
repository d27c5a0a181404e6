// Drawings opened large: begun at the place that was touched, made larger and smaller, moved by the mouse. A finger moves them by itself.

// Pixels a millimetre of paper.
const LEAST = 1;
const MOST = 16;

// Pixels that an arrow key moves by.
const STEP = 60;

const roomOf = (sheet) => sheet.querySelector('.room');

// Puts a place of the drawing, as shares of its width and height, into the middle of the room.
function centre(room, x, y) {
  const sheet = room.firstElementChild;
  room.scrollLeft = sheet.getBoundingClientRect().width * x - room.clientWidth / 2;
  room.scrollTop = sheet.getBoundingClientRect().height * y - room.clientHeight / 2;
}

function scaleOf(room) {
  const sheet = room.firstElementChild;
  return sheet.width.baseVal.value / sheet.viewBox.baseVal.width;
}

function size(room, scale) {
  const sheet = room.firstElementChild;
  sheet.setAttribute('width', scale * sheet.viewBox.baseVal.width);
  sheet.setAttribute('height', scale * sheet.viewBox.baseVal.height);
}

function grow(room, factor) {
  const sheet = room.firstElementChild;
  const x = (room.scrollLeft + room.clientWidth / 2) / sheet.width.baseVal.value;
  const y = (room.scrollTop + room.clientHeight / 2) / sheet.height.baseVal.value;
  size(room, Math.min(MOST, Math.max(LEAST, scaleOf(room) * factor)));
  centre(room, x, y);
}

function drag(room, down) {
  const from = [room.scrollLeft + down.clientX, room.scrollTop + down.clientY];
  const move = (e) => { [room.scrollLeft, room.scrollTop] = [from[0] - e.clientX, from[1] - e.clientY]; };
  room.setPointerCapture(down.pointerId);
  room.addEventListener('pointermove', move);
  room.addEventListener('pointerup', () => room.removeEventListener('pointermove', move), { once: true });
}

/** Listens on the whole page: drawings are swapped while it follows a file. */
export function wireSheets() {
  let touched = [0.5, 0.5];
  document.addEventListener('click', (e) => {
    const small = e.target.closest('.small-sheet');
    if (small) {
      const box = small.getBoundingClientRect();
      touched = e.detail === 0 ? [0.5, 0.5] : [(e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height];
    }
    const factor = e.target.closest('[data-grow]')?.dataset.grow;
    if (factor) grow(roomOf(e.target.closest('.large-sheet')), Number(factor));
  }, true);

  // The event does not climb, but is seen on its way down.
  document.addEventListener('toggle', (e) => {
    if (e.newState !== 'open' || !e.target.matches('.large-sheet')) return;
    if ('kept' in e.target.dataset) delete e.target.dataset.kept;
    else centre(roomOf(e.target), ...touched);
  }, true);
  document.addEventListener('keydown', (e) => {
    const room = e.target.closest('.large-sheet')?.querySelector('.room');
    if (!room || e.ctrlKey || e.metaKey || e.altKey) return;
    const factor = { '+': 1.25, '=': 1.25, '-': 0.8 }[e.key];
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (factor) grow(room, factor);
    else if (way) room.scrollBy(STEP * way[0], STEP * way[1]);
    else return;
    e.preventDefault();
  });
  document.addEventListener('pointerdown', (e) => {
    const room = e.target.closest('.room');
    if (room && e.pointerType === 'mouse' && e.button === 0) drag(room, e);
  });
}

/** What is open stays open, as large and where it was, while the sections are swapped. */
export function keepingSheet(swap) {
  const open = document.querySelector('.large-sheet:popover-open');
  const was = open && { scale: scaleOf(roomOf(open)), left: roomOf(open).scrollLeft, top: roomOf(open).scrollTop };
  swap();
  const again = open && document.getElementById(open.id);
  if (!again || again === open) return;
  again.dataset.kept = '';
  again.showPopover();
  size(roomOf(again), was.scale);
  [roomOf(again).scrollLeft, roomOf(again).scrollTop] = [was.left, was.top];
}
