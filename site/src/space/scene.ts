// The mold and its kit in space, drawn by three. This file is packed on its own
// and unpacked when the view is first opened. It draws only when something has
// changed. What a cut lays open is filled in each body's colour, see cap.ts.
import {
  AmbientLight, Box3, BufferAttribute, BufferGeometry, Color, DirectionalLight, FrontSide, Group, type Material, Mesh, MeshLambertMaterial,
  PerspectiveCamera, Plane, Scene, Vector3, WebGLRenderer,
} from "three";
import { cap } from "./cap";
import type { Orbit } from "./orbit";
import { onCut, onEnd, onSkin, onTop, reaches, type Spot, spread, widest } from "./spots";
import { triangles } from "./stl";

/** One body: its mesh, its colours, where it stands and which letter it bears. */
export interface Body {
  key: string; bytes: Uint8Array; colour: string; label: string;
  /** The way it is pulled; null for what stays. */
  pull: [number, number, number] | null;
}

export interface Space {
  show(bodies: readonly Body[], laid: boolean): void;
  /** How far each body has moved along its pull, in mm, by key. */
  move(by: ReadonlyMap<string, number>): void;
  /** Height of the cut as a share of the half width, -1 to 1; null for none. */
  cut(at: number | null): void;
  look(o: Orbit): void;
  size(width: number, height: number): void;
  close(): void;
}

interface Held {
  body: Body; group: Group; cap: Mesh; plane: Plane; box: Box3; label: HTMLElement; skin: Float32Array;
  /** How far it reaches to WAYS ways round. */
  reach: number[];
  /** The height at which the letter of a part that goes all round stands. */
  level: number;
  /** Where the letter stands on the cut, and of which cut that is. */
  cut: { at: number | null; spot: Spot | null };
}

const WAYS = 24;

/** The cutting plane takes away what lies toward +x. */
const TOWARD = new Vector3(-1, 0, 0);

function open(canvas: HTMLCanvasElement, labels: HTMLElement): Space {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true });
  renderer.localClippingEnabled = true;
  renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
  const scene = new Scene(), camera = new PerspectiveCamera(28, 1, 1, 20000);
  camera.up.set(0, 0, 1);
  const sun = new DirectionalLight(0xffffff, 2.1);
  scene.add(new AmbientLight(0xffffff, 1.35), sun);
  let held: Held[] = [], orbit: Orbit = { azimuth: 0, elevation: 0, zoom: 1 }, waiting = 0, half = 100, cutAt: number | null = null, laidOut = false;
  let width = 1, height = 1;
  const middle = new Vector3();

  /** How far back a drum of that radius and half height is seen whole, however it is turned. */
  const away = (r: number, h: number, elevation: number) => {
    const tall = Math.tan((camera.fov * Math.PI) / 360), wide = tall * (width / height), s = Math.abs(Math.sin(elevation)), c = Math.cos(elevation);
    return 1.12 * Math.max(r / wide + h * s, (r * s + h * c) / tall + r * c - h * s, Math.abs(h * c - r * s) / tall + r * c + h * s);
  };
  const draw = () => {
    waiting = 0;
    const all = new Box3();
    for (const h of held) all.union(h.box.clone().translate(h.group.position));
    if (all.isEmpty()) all.set(new Vector3(-1, -1, -1), new Vector3(1, 1, 1));
    all.getCenter(middle);
    const { azimuth: a, elevation: e } = orbit, box = all.getSize(new Vector3()), radius = box.length() / 2;
    const back = away(laidOut ? Math.hypot(box.x, box.y) / 2 : far(), box.z / 2, e) / orbit.zoom;
    camera.position.set(Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)).multiplyScalar(back).add(middle);
    camera.near = Math.max(1, back - 3 * radius);
    camera.far = back + 3 * radius;
    camera.lookAt(middle);
    camera.updateProjectionMatrix();
    sun.position.copy(camera.position).sub(middle).normalize().add(new Vector3(-Math.sin(a) * 0.5, Math.cos(a) * 0.5, 0.9));
    renderer.render(scene, camera);
    const named = held.flatMap((h) => {
      const spot = h.body.label && lettered(h);
      h.label.hidden = true;
      if (!spot) return [];
      const p = new Vector3(...spot).add(h.group.position).project(camera);
      return [{ at: h.label, words: h.body.label, x: ((p.x + 1) / 2) * width, y: ((1 - p.y) / 2) * height, far: p.z }];
    });
    spread(named).forEach((to, i) => {
      const { at } = named[i]!;
      at.hidden = !to;
      if (to) at.style.transform = `translate(${to[0]}px, ${to[1]}px) translate(-50%, -50%)`;
    });
  };
  /** How far what stands there reaches from its middle. */
  const far = () => Math.max(1, ...held.flatMap((h) => h.reach.map((r, k) => {
    const to = (2 * Math.PI * k) / WAYS, { x, y } = h.group.position;
    return r + (x - middle.x) * Math.cos(to) + (y - middle.y) * Math.sin(to);
  })));
  /** Where a body's letter stands, before it is moved: on the cut where that is seen, else where its skin is
   *  seen from here; null where neither is. */
  const lettered = (h: Held): Spot | null => {
    const { skin, box: { min, max } } = h, pull = h.body.pull, { azimuth: a, elevation: e } = orbit, top = e >= 0;
    if (laidOut || !pull) return onTop(skin, max.z, [(min.x + max.x) / 2, (min.y + max.y) / 2]);
    const x = cutAt === null ? Infinity : cutAt * half;
    if (x <= min.x) return null;
    if (h.cut.at !== cutAt) h.cut = { at: cutAt, spot: cutAt === null ? null : onCut(skin, min.z, max.z, x) };
    if (h.cut.spot && Math.cos(a) > 0.15) return h.cut.spot;
    const out = Math.atan2(pull[1], pull[0]);
    let spot: Spot | null;
    if (pull[2]) spot = onSkin(skin, h.level, a + 0.5);
    else if (Math.cos(out - a) > 0.1) spot = onSkin(skin, h.level, out);
    else { // it turns its back: its end is seen, unless another part lies on that, or a flank
      const covered = h.group.position.length() < 1 && held.some((o) => o.body.pull && o.body.pull[2] * (top ? 1 : -1) > 0 && Math.abs(o.group.position.z) < 1);
      const flank = out + Math.sign(Math.sin(a - out)) * 1.2;
      spot = !covered ? onEnd(skin, min.z, max.z, out, top) : Math.cos(flank - a) > 0.3 ? onSkin(skin, h.level, flank) : null;
    }
    return spot && spot[0] > x ? h.cut.spot : spot;
  };
  const ask = () => { waiting ||= requestAnimationFrame(draw); };
  const planes = () => {
    for (const h of held) {
      const on = cutAt !== null && !laidOut, x = (cutAt ?? 0) * half;
      h.plane.constant = on ? x + h.group.position.x : 1e6;
      h.cap.visible = on;
      h.cap.position.set(x, 0, 0);
    }
    ask();
  };
  const clear = () => {
    for (const h of held) {
      h.group.traverse((o) => {
        if (!(o instanceof Mesh)) return;
        (o.geometry as BufferGeometry).dispose();
        (o.material as Material).dispose();
      });
      scene.remove(h.group);
      h.label.remove();
    }
    held = [];
  };

  return {
    show(bodies, laid) {
      clear();
      laidOut = laid;
      half = 1;
      for (const [i, body] of bodies.entries()) {
        const t = triangles(body.bytes), g = new BufferGeometry();
        g.setAttribute("position", new BufferAttribute(t.position, 3));
        g.setAttribute("normal", new BufferAttribute(t.normal, 3));
        const plane = new Plane(TOWARD.clone(), 1e6), full = new Color(body.colour);
        const faces = new MeshLambertMaterial({ color: full.clone().lerp(new Color(0xffffff), body.pull ? 0.45 : 0.1), side: FrontSide, clippingPlanes: [plane] });
        const group = new Group(), box = new Box3().setFromBufferAttribute(g.getAttribute("position") as BufferAttribute);
        const shell = new Mesh(g, faces);
        shell.renderOrder = bodies.length;
        group.add(shell);
        const [fill, ...counts] = cap(g, plane, box, full.lerp(new Color(0xffffff), 0.15), i / bodies.length);
        group.add(fill, ...counts);
        scene.add(group);
        const label = document.createElement("span");
        label.textContent = body.label;
        label.hidden = body.label === "";
        label.style.borderColor = body.colour;
        labels.append(label);
        half = Math.max(half, box.max.x);
        const skin = t.position;
        held.push({ body, group, cap: fill, plane, box, label, skin, reach: reaches(skin, WAYS), level: widest(skin, box.min.z, box.max.z), cut: { at: null, spot: null } });
      }
      if (laid) lay(held);
      planes();
    },
    move(by) {
      for (const h of held) if (h.body.pull && !laidOut) h.group.position.set(...h.body.pull).multiplyScalar(by.get(h.body.key) ?? 0);
      planes();
    },
    cut(at) { cutAt = at; planes(); },
    look(o) { orbit = o; ask(); },
    size(w, h) {
      [width, height] = [w, h];
      renderer.setSize(w, h, false);
      camera.aspect = w / h;
      ask();
    },
    close() {
      cancelAnimationFrame(waiting);
      clear();
      renderer.dispose();
    },
  };
}

/** Pieces side by side in rows about as wide as deep, 20 mm apart. */
function lay(held: readonly Held[]): void {
  const gap = 20, size = (h: Held) => h.box.getSize(new Vector3());
  const wide = Math.sqrt(held.reduce((s, h) => s + (size(h).x + gap) * (size(h).y + gap), 0)) * 1.25;
  let x = 0, y = 0, deep = 0;
  for (const h of held) {
    const s = size(h);
    if (x > 0 && x + s.x > wide) [x, y, deep] = [0, y + deep + gap, 0];
    h.group.position.set(x - h.box.min.x, y - h.box.min.y, -h.box.min.z);
    x += s.x + gap;
    deep = Math.max(deep, s.y);
  }
}

Object.defineProperty(window, "moldwrightSpace", { value: open });
export type Open = typeof open;
