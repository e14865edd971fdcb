// Binary STL to arrays: three corners and the face's normal for each triangle.
// Layout: 80 bytes of header, the count, then 50 bytes a triangle, little-endian.

export interface Triangles { position: Float32Array; normal: Float32Array }

export function triangles(bytes: Uint8Array): Triangles {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const n = view.getUint32(80, true);
  if (bytes.byteLength !== 84 + 50 * n) throw new Error(`The mesh says ${n} triangles in ${bytes.byteLength} bytes.`);
  const position = new Float32Array(9 * n), normal = new Float32Array(9 * n);
  for (let i = 0, at = 84; i < n; i++, at += 50) {
    for (let k = 0; k < 9; k++) {
      position[9 * i + k] = view.getFloat32(at + 12 + 4 * k, true);
      normal[9 * i + k] = view.getFloat32(at + 4 * (k % 3), true);
    }
  }
  return { position, normal };
}
