// Findings as numbered buttons over the picture. Buttons, not drawn dots: they can be reached by keyboard and read aloud.
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
    this.layer.append(this.spot);
    this.place();
  }

  set(findings) {
    this.layer.replaceChildren();
    this.pins = findings.filter((f) => f.at).map((finding) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = `pin ${finding.severity}`;
      button.textContent = finding.number;
      button.setAttribute('aria-label', `Finding ${finding.number}, ${finding.severity}: ${finding.message}`);
      button.addEventListener('click', () => this.onPick(finding));
      this.layer.append(button);
      return { finding, button };
    });
    this.place();
  }

  place() {
    for (const { finding, button } of this.pins) this.#put(button, finding.at);
    if (this.spot.at) this.#put(this.spot, this.spot.at);
  }

  #put(element, place) {
    const at = this.viewer.project(place);
    element.hidden = at === null || at[0] < 0 || at[1] < 0 || at[0] > this.layer.clientWidth || at[1] > this.layer.clientHeight;
    if (at) element.style.transform = `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px) translate(-50%, -50%)`;
  }
}
