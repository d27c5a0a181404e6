// Findings as numbered buttons over the picture. Buttons, not drawn dots: they can be reached by keyboard and read aloud.
export class Pins {
  constructor(layer, viewer, onPick) {
    this.layer = layer;
    this.viewer = viewer;
    this.onPick = onPick;
    this.pins = [];
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
    for (const { finding, button } of this.pins) {
      const at = this.viewer.project(finding.at);
      button.hidden = at === null || at[0] < 0 || at[1] < 0 || at[0] > this.layer.clientWidth || at[1] > this.layer.clientHeight;
      if (at) button.style.transform = `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px) translate(-50%, -50%)`;
    }
  }
}
