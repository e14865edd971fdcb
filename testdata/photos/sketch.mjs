// Draws the two test sketches: the vase of pot.pov in pencil on shaded, grainy
// paper, whole and as one side with its axis. 4 pixels to 1 mm, the axis at
// x = 320, the foot's line at y = 730; the line wanders by 0.8 of a pixel.
//   node sketch.mjs
import { writeFileSync } from "node:fs";
import { crc32, deflateSync } from "node:zlib";

const W = 640, H = 800, K = 4, X = 320, Y = 730;
const radius = (z) => 44 + 16 * Math.sin((z - 20) / 27);

/** Points of a line, every third of a pixel or closer. */
function line(...points) {
  const out = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]], n = Math.max(1, Math.ceil(3 * Math.hypot(b[0] - a[0], b[1] - a[1])));
    for (let k = 0; k <= n; k++) out.push([a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n]);
  }
  return out;
}
const wall = (side) => Array.from({ length: 171 }, (_, z) => [X + side * K * radius(z), Y - K * z]);
const foot = [X, Y], rim = [X, Y - K * 170];
const drawings = {
  "sketch-both": [[line(foot, ...wall(1), rim), 1.5], [line(foot, ...wall(-1), rim), 1.5]],
  "sketch-half": [[line(foot, ...wall(1)), 1.5], [line([X, Y - 12], [X, 0]), 1.1]],
};

function png(grey) {
  const rows = Buffer.alloc(H * (W + 1));
  for (let y = 0; y < H; y++) grey.copy(rows, y * (W + 1) + 1, y * W, (y + 1) * W);
  const chunk = (name, data) => {
    const body = Buffer.concat([Buffer.from(name), data]), out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(W);
  head.writeUInt32BE(H, 4);
  head[8] = 8;
  return Buffer.concat([Buffer.from("89504e470d0a1a0a", "hex"), chunk("IHDR", head), chunk("IDAT", deflateSync(rows, { level: 9 })), chunk("IEND", Buffer.alloc(0))]);
}

for (const [name, strokes] of Object.entries(drawings)) {
  const ink = new Float64Array(W * H);
  for (const [points, half] of strokes) {
    points.forEach(([px, py], i) => {
      const x = px + 0.8 * Math.sin(py / 37) , y = py + 0.8 * Math.sin(px / 41), press = 0.75 + 0.2 * Math.sin(i / 180);
      for (let v = Math.floor(y - 4); v <= y + 4; v++) {
        for (let u = Math.floor(x - 4); u <= x + 4; u++) {
          if (u < 0 || v < 0 || u >= W || v >= H) continue;
          const d = Math.hypot(u + 0.5 - x, v + 0.5 - y);
          ink[v * W + u] = Math.max(ink[v * W + u], press * Math.max(0, Math.min(1, half + 0.5 - d)));
        }
      }
    });
  }
  let seed = 5;
  const grey = Buffer.alloc(W * H);
  for (let i = 0; i < W * H; i++) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    const paper = 236 - 26 * ((i % W) / W) - 14 * (i / W / H) + 4 * ((seed >>> 24) / 255 - 0.5);
    grey[i] = Math.round(paper * (1 - ink[i]) + 70 * ink[i]);
  }
  writeFileSync(new URL(`${name}.png`, import.meta.url), png(grey));
}
