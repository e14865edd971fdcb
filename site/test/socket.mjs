// The little of a WebSocket client (RFC 6455) that a test needs where Node has
// none: text both ways to a browser on this machine. No extensions, no fragments
// sent; those that come are put together.
import { createHash, randomBytes } from "node:crypto";
import { request } from "node:http";

/** Connects to ws://…; hear gets each message as text. Gives send and close. */
export function connect(url, hear) {
  const key = randomBytes(16).toString("base64");
  return new Promise((resolve, reject) => {
    const q = request(url.replace(/^ws:/, "http:"), { headers: { Connection: "Upgrade", Upgrade: "websocket", "Sec-WebSocket-Version": "13", "Sec-WebSocket-Key": key } });
    q.on("error", reject).on("response", (a) => reject(new Error(`no socket: ${a.statusCode}`)));
    q.on("upgrade", (a, socket, head) => {
      const want = createHash("sha1").update(`${key}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`).digest("base64");
      if (a.headers["sec-websocket-accept"] !== want) return reject(new Error("the socket answers another key"));
      let rest = head, parts = [];
      const frame = (op, data) => {
        const n = data.length, mask = randomBytes(4);
        const size = n < 126 ? Buffer.from([128 | n]) : n < 65_536 ? Buffer.from([254, n >> 8, n & 255]) : Buffer.concat([Buffer.from([255]), (() => { const b = Buffer.alloc(8); b.writeBigUInt64BE(BigInt(n)); return b; })()]);
        socket.write(Buffer.concat([Buffer.from([128 | op]), size, mask, data.map((x, i) => x ^ mask[i & 3])]));
      };
      const take = () => {
        for (;;) {
          if (rest.length < 2) return;
          let n = rest[1] & 127, at = 2;
          if (n === 126) { if (rest.length < 4) return; n = rest.readUInt16BE(2); at = 4; }
          else if (n === 127) { if (rest.length < 10) return; n = Number(rest.readBigUInt64BE(2)); at = 10; }
          if (rest.length < at + n) return;
          const end = rest[0] & 128, op = rest[0] & 15, data = rest.subarray(at, at + n);
          rest = rest.subarray(at + n);
          if (op === 9) frame(10, data);
          else if (op <= 2) {
            parts.push(data);
            if (end) { hear(Buffer.concat(parts).toString()); parts = []; }
          }
        }
      };
      socket.on("data", (d) => { rest = Buffer.concat([rest, d]); take(); }).on("error", () => {});
      take();
      resolve({ send: (text) => frame(1, Buffer.from(text)), close: () => socket.destroy() });
    });
    q.end();
  });
}
