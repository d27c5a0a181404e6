// Findings as numbered buttons over the picture. Buttons, not drawn dots: they can be reached by keyboard and read aloud.
// A pin and a little air, in pixels.
const APART = 28;

function move(element, [x, y]) {
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
}

export class Pins {
  constructor(layer, viewer, onPick) {
    this.layer = layer;
    this.viewer = viewer;
    this.onPick = onPick;
    this.pins = [];
    this.spot = Object.assign(document.createElement('span'), { className: 'spot', hidden: true });
  }

  /** Rings a place that is no finding. */
  mark(at) {
    this.spot.at = at;
    this.spot.part = at && this.viewer.partAt(at);
    this.spot.hidden = !at;
    if (at) this.layer.append(this.spot);
    this.place();
  }

  set(findings) {
    this.layer.replaceChildren();
    this.pins = findings.filter((f) => f.at).map((finding) => {
      const part = this.viewer.partAt(finding.at);
      const button = document.createElement('button');
      button.type = 'button';
      button.className = `pin ${finding.severity}`;
      button.textContent = finding.number;
      button.setAttribute('aria-label', `Finding ${finding.number}, ${finding.severity}: ${finding.message}`);
      button.addEventListener('click', () => this.onPick(finding));
      this.layer.append(button);
      return { finding, button, part };
    });
    this.place();
  }

  place() {
    // Pins that would cover each other stand side by side.
    const taken = [];
    for (const { finding, button, part } of this.pins) {
      const at = this.#put(button, finding.at, part);
      if (!at) continue;
      while (taken.some(([x, y]) => Math.abs(x - at[0]) < APART && Math.abs(y - at[1]) < APART)) at[0] += APART;
      taken.push(at);
      move(button, at);
    }
    if (this.spot.at) this.#put(this.spot, this.spot.at, this.spot.part);
  }

  // A place goes with its part when the housing is pulled apart, and away with it when it is cut off or hidden.
  #put(element, place, part) {
    const at = this.viewer.shows(part, place) ? this.viewer.project(place, part) : null;
    element.hidden = at === null || at[0] < 0 || at[1] < 0 || at[0] > this.layer.clientWidth || at[1] > this.layer.clientHeight;
    if (at) move(element, at);
    return element.hidden ? null : at;
  }
}
