// The housing in space: orbit, zoom, explode, cut, show and hide, glow. Draws only when something has changed.
import {
  AlwaysStencilFunc, BackSide, Box3, BufferAttribute, BufferGeometry, Color, DecrementWrapStencilOp, DirectionalLight, DoubleSide,
  EdgesGeometry, FrontSide, Group, HemisphereLight, IncrementWrapStencilOp, LineBasicMaterial, LineSegments, Mesh,
  MeshBasicMaterial, MeshLambertMaterial, NotEqualStencilFunc, PerspectiveCamera, Plane, PlaneGeometry, RepeatWrapping,
  ReplaceStencilOp, SRGBColorSpace, Scene, TextureLoader, Vector3, WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

const CREASE_DEGREES = 24;

/** Black plastic shows no relief: on a screen it is drawn as dark grey. */
function lifted(colour) {
  const own = new Color(colour);
  return Math.max(own.r, own.g, own.b) < 0.06 ? own.lerp(new Color(0xffffff), 0.06) : own;
}

/** Where on the light's picture each corner lies: seen from the front, or round the wall. */
function lightPlaces(places, { extent: [left, bottom, right, top], around }) {
  const corners = places.length / 3;
  const uv = new Float32Array(corners * 2);
  for (let i = 0; i < corners; i++) {
    const [x, y, z] = places.subarray(3 * i, 3 * i + 3);
    uv[2 * i] = around ? (Math.atan2(y, x) / (2 * Math.PI) + 1) % 1 : (x - left) / (right - left);
    uv[2 * i + 1] = ((around ? z : y) - bottom) / (top - bottom);
  }
  // A triangle over the seam has corners at both ends of the picture: the low ones belong to the next round.
  for (let t = 0; around && t < corners; t += 3) {
    const of = [t, t + 1, t + 2];
    if (Math.max(...of.map((i) => uv[2 * i])) - Math.min(...of.map((i) => uv[2 * i])) > 0.5) {
      for (const i of of) if (uv[2 * i] < 0.5) uv[2 * i] += 1;
    }
  }
  return uv;
}

export class Viewer {
  constructor(canvas, onDraw) {
    this.canvas = canvas;
    this.onDraw = onDraw;
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true, preserveDrawingBuffer: true });
    this.renderer.localClippingEnabled = true;
    this.scene = new Scene();
    this.camera = new PerspectiveCamera(30, 1, 1, 5000);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.addEventListener('change', () => this.invalidate());
    this.sky = new HemisphereLight(0xffffff, 0x98a0a8, 2.2);
    this.sun = new DirectionalLight(0xffffff, 1.6);
    this.fill = new DirectionalLight(0xffffff, 0.5);
    this.sun.position.set(-120, -160, 260);
    this.fill.position.set(180, 60, -120);
    this.scene.add(this.sky, this.sun, this.fill);
    this.cut = new Plane(new Vector3(0, 1, 0), 0);
    this.cutOn = false;
    this.parts = [];
    this.world = new Group();
    this.scene.add(this.world);
    this.spread = 0;
    this.pending = false;
    new ResizeObserver(() => this.resize()).observe(canvas);
    this.resize();
  }

  resize() {
    const { clientWidth: width, clientHeight: height } = this.canvas;
    if (width === 0 || height === 0) return;
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    this.invalidate();
  }

  /** Shows other bodies; the eye stays where it is unless told to step back. */
  setParts(parts, stepBack) {
    const hidden = new Set(this.parts.filter((p) => !p.group.visible).map((p) => p.name));
    for (const part of this.parts) {
      part.group.traverse((o) => { o.geometry?.dispose(); o.material?.dispose(); });
    }
    this.world.clear();
    this.parts = parts.map((part, order) => this.#body(part, order));
    for (const part of this.parts) part.group.visible = !hidden.has(part.name);
    // The surfaces alone: the planes that fill cuts reach far beyond the housing.
    this.bounds = this.parts.reduce((box, part) => box.expandByObject(part.surface), new Box3());
    this.explode(this.spread);
    if (stepBack) this.lookFrom('front');
    this.invalidate();
  }

  #body(part, order) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(part.positions, 3));
    geometry.computeVertexNormals();
    const group = new Group();
    const clippingPlanes = [];
    const material = new MeshLambertMaterial({
      color: lifted(part.colour), flatShading: true, clippingPlanes, transparent: part.opacity < 1, opacity: part.opacity,
    });
    const surface = new Mesh(geometry, material);
    surface.renderOrder = 10;
    const edges = new LineSegments(
      new EdgesGeometry(geometry, CREASE_DEGREES),
      new LineBasicMaterial({ color: part.edge, clippingPlanes, transparent: true, opacity: 0.55 }),
    );
    edges.renderOrder = 11;
    group.add(surface, edges);

    // The cut face: count faces behind and in front of the plane in the stencil, fill where they do not cancel.
    const counters = [[BackSide, IncrementWrapStencilOp], [FrontSide, DecrementWrapStencilOp]].map(([side, op]) => {
      const counter = new Mesh(geometry, new MeshBasicMaterial({
        side, depthWrite: false, depthTest: false, colorWrite: false, stencilWrite: true, stencilFunc: AlwaysStencilFunc,
        stencilFail: op, stencilZFail: op, stencilZPass: op, clippingPlanes,
      }));
      counter.renderOrder = order + 0.1;
      counter.visible = false;
      group.add(counter);
      return counter;
    });
    const cap = new Mesh(new PlaneGeometry(2000, 2000), new MeshBasicMaterial({
      color: part.cutColour, side: DoubleSide, stencilWrite: true, stencilRef: 0, stencilFunc: NotEqualStencilFunc,
      stencilFail: ReplaceStencilOp, stencilZFail: ReplaceStencilOp, stencilZPass: ReplaceStencilOp,
    }));
    cap.renderOrder = order + 0.2;
    cap.visible = false;
    cap.onAfterRender = (renderer) => renderer.clearStencil();
    this.world.add(group, cap);
    return { ...part, order, group, surface, edges, counters, cap, clippingPlanes };
  }

  /** 0: assembled, 1: wide apart. The eye steps back as the stack grows, and looks at its middle. */
  explode(share) {
    this.spread = share;
    const step = this.bounds.isEmpty() ? 18 : Math.max(18, this.bounds.max.z * 0.9);
    for (const part of this.parts) part.group.position.z = share * step * part.level;
    this.#stepBack(share * step * Math.max(0, ...this.parts.map((part) => part.level)));
    this.invalidate();
  }

  #stepBack(rise) {
    if (this.bounds.isEmpty()) return;
    const last = this.rise ?? 0;
    const size = this.bounds.getSize(new Vector3()).length();
    const offset = this.camera.position.clone().sub(this.controls.target).multiplyScalar((size + 0.8 * rise) / (size + 0.8 * last));
    this.controls.target.z += (rise - last) / 2;
    this.camera.position.copy(this.controls.target).add(offset);
    this.rise = rise;
    this.controls.update();
  }

  /**
   * Cuts the housing open at a plane: axis 'x', 'y', 'z' or null; place in mm. What lies towards the eye is taken away, as it stood
   * when the axis was chosen, so that a cut always shows its face.
   */
  section(axis, place) {
    if (axis !== null && axis !== this.cutAxis) this.cutSide = this.camera.position[axis] >= this.controls.target[axis] ? 1 : -1;
    this.cutAxis = axis;
    this.cutOn = axis !== null;
    if (this.cutOn) {
      this.cut.normal.set(0, 0, 0);
      this.cut.normal[axis] = -this.cutSide;
      this.cut.constant = this.cutSide * place;
    }
    for (const part of this.parts) this.#applyCut(part);
    this.invalidate();
  }

  #applyCut(part) {
    part.clippingPlanes.length = 0;
    if (this.cutOn) part.clippingPlanes.push(this.cut);
    for (const counter of part.counters) counter.visible = this.cutOn;
    part.cap.visible = this.cutOn && part.group.visible;
    if (this.cutOn) {
      this.cut.coplanarPoint(part.cap.position);
      part.cap.lookAt(part.cap.position.clone().sub(this.cut.normal));
    }
    part.group.traverse((o) => { if (o.material) o.material.needsUpdate = true; });
  }

  show(name, visible) {
    for (const part of this.parts.filter((p) => p.name === name || p.belongsTo === name)) {
      part.group.visible = visible;
      part.cap.visible = visible && this.cutOn;
    }
    this.invalidate();
  }

  /** The computed light on the diffuser's face; null: off. */
  async glow(light) {
    this.lit = light !== null;
    if (this.glassy) this.glass(false);
    this.canvas.parentElement.classList.toggle('lit', this.lit);
    this.sky.intensity = this.lit ? 0.35 : 2.2;
    this.sun.intensity = this.lit ? 0.25 : 1.6;
    this.fill.intensity = this.lit ? 0.08 : 0.5;
    for (const part of this.parts.filter((p) => this.#shines(p))) {
      const material = part.surface.material;

      // Its own colour by day is not in the picture.
      material.opacity = this.#opacityOf(part);
      material.color.set(light ? 0x000000 : lifted(part.colour));
      if (!light) {
        material.emissiveMap = null;
        material.emissive.set(0x000000);
      } else {
        part.surface.geometry.setAttribute('uv', new BufferAttribute(lightPlaces(part.positions, light), 2));
        const texture = await new TextureLoader().loadAsync(light.image);
        texture.colorSpace = SRGBColorSpace;
        if (light.around) texture.wrapS = RepeatWrapping;
        material.emissiveMap = texture;
        material.emissive.set(0xffffff);
      }
      material.needsUpdate = true;
    }
    this.invalidate();
  }

  /** Named stands of the eye. */
  lookFrom(stand) {
    if (this.bounds.isEmpty()) return;
    if (this.glassy) this.glass(false);
    const centre = this.bounds.getCenter(new Vector3());
    const reach = this.bounds.getSize(new Vector3()).length() / Math.min(1, this.camera.aspect);
    const way = {
      front: new Vector3(-0.35, -0.75, 0.9), above: new Vector3(0, -0.001, 1), below: new Vector3(-0.3, -0.6, -0.9), side: new Vector3(0, -1, 0.12),
    }[stand].normalize();
    this.controls.target.copy(centre);
    this.camera.position.copy(centre).addScaledVector(way, reach * 1.5);
    const { rise } = this;
    this.rise = 0;
    if (rise) this.#stepBack(rise);
    this.controls.update();
    this.invalidate();
  }

  /** Flies to a place on the housing, which goes glassy to show it. */
  flyTo([x, y, z], still) {
    this.glass(true);
    const target = new Vector3(x, y, z + (this.#named(this.partAt([x, y, z]))?.group.position.z ?? 0));
    const from = this.controls.target.clone();
    const eyeFrom = this.camera.position.clone();
    const outward = new Vector3(x, y, 0);
    if (outward.lengthSq() < 1) outward.set(0, -1, 0);
    outward.normalize().add(new Vector3(0, 0, 0.8)).normalize();
    const reach = Math.max(60, this.bounds.getSize(new Vector3()).length() * 0.7);
    const eyeTo = target.clone().addScaledVector(outward, reach);
    const start = performance.now();
    const duration = still ? 0 : 450;
    const step = (now) => {
      const t = duration === 0 ? 1 : Math.min(1, (now - start) / duration);
      const eased = t * t * (3 - 2 * t);
      this.controls.target.lerpVectors(from, target, eased);
      this.camera.position.lerpVectors(eyeFrom, eyeTo, eased);
      this.controls.update();
      this.invalidate();
      if (t < 1) requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }

  /** Turns and zooms by keys: degrees and a factor. */
  nudge(azimuth, polar, zoom) {
    const offset = this.camera.position.clone().sub(this.controls.target);
    const radius = offset.length() * zoom;
    const theta = Math.atan2(offset.y, offset.x) + (azimuth * Math.PI) / 180;
    const phi = Math.min(3.1, Math.max(0.04, Math.acos(offset.z / offset.length()) + (polar * Math.PI) / 180));
    offset.set(Math.sin(phi) * Math.cos(theta), Math.sin(phi) * Math.sin(theta), Math.cos(phi)).multiplyScalar(radius);
    this.camera.position.copy(this.controls.target).add(offset);
    this.controls.update();
    this.invalidate();
  }

  /** The body whose surface is nearest to a place: the one that a finding there is about. */
  partAt([x, y, z]) {
    let nearest = null;
    let least = Infinity;
    for (const part of this.parts) {
      const places = part.positions;
      for (let i = 0; i < places.length; i += 3) {
        const square = (places[i] - x) ** 2 + (places[i + 1] - y) ** 2 + (places[i + 2] - z) ** 2;
        if (square < least) { least = square; nearest = part.name; }
      }
    }
    return nearest;
  }

  #named(name) {
    return this.parts.find((part) => part.name === name);
  }

  /** Whether a place of a body is to be seen: not hidden with it, not cut away. */
  shows(name, [x, y, z]) {
    const part = this.#named(name);
    if (part && !part.group.visible) return false;
    return !this.cutOn || this.cut.distanceToPoint(new Vector3(x, y, z + (part?.group.position.z ?? 0))) > -0.5;
  }

  #shines(part) {
    return part.name === 'diffuser' || (part.name === 'cover' && part.translucent);
  }

  // What lies behind a lit sheet is in the light's picture already.
  #opacityOf(part) {
    return this.lit && this.#shines(part) ? 1 : part.opacity;
  }

  /** Makes the printed parts glassy, so that places inside are seen; false: as they are. */
  glass(on) {
    this.glassy = on;
    for (const part of this.parts.filter((p) => p.belongsTo !== 'board')) {
      const { material } = part.surface;
      material.opacity = on ? 0.22 : this.#opacityOf(part);
      material.transparent = on || part.opacity < 1;
      material.depthWrite = !on;
      material.needsUpdate = true;
    }
    this.invalidate();
  }

  /** Where a place of a body lies on the canvas, in CSS pixels; null when behind the eye. */
  project([x, y, z], name) {
    const p = new Vector3(x, y, z + (this.#named(name)?.group.position.z ?? 0)).project(this.camera);
    if (p.z > 1) return null;
    return [((p.x + 1) / 2) * this.canvas.clientWidth, ((1 - p.y) / 2) * this.canvas.clientHeight];
  }

  invalidate() {
    if (this.pending) return;
    this.pending = true;
    requestAnimationFrame(() => {
      this.pending = false;
      this.renderer.render(this.scene, this.camera);
      this.drawn = (this.drawn ?? 0) + 1;
      this.onDraw?.();
    });
  }
}
