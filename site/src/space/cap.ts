// The face that a cut lays open. Where the ray from the eye through the cutting
// plane leaves a closed body more often than it enters it, the plane lies inside
// the body: the stencil counts that, and the plane is painted where it is not 0.
import {
  AlwaysStencilFunc, BackSide, type Box3, type BufferGeometry, type Color, DecrementWrapStencilOp, DoubleSide, FrontSide, IncrementWrapStencilOp,
  Mesh, MeshBasicMaterial, NotEqualStencilFunc, type Plane, PlaneGeometry, ReplaceStencilOp, type Side, type StencilOp, Vector3,
} from "three";

/** The painted plane, which faces +x, and the two passes that count for it;
 *  order, from 0 to 1, keeps one body's count from another's. */
export function cap(body: BufferGeometry, plane: Plane, box: Box3, colour: Color, order: number): [Mesh, Mesh, Mesh] {
  const count = (side: Side, op: StencilOp): Mesh => {
    const m = new Mesh(body, new MeshBasicMaterial({
      side, clippingPlanes: [plane], depthWrite: false, depthTest: false, colorWrite: false, stencilWrite: true, stencilFunc: AlwaysStencilFunc,
      stencilFail: op, stencilZFail: op, stencilZPass: op,
    }));
    m.renderOrder = order;
    return m;
  };
  const size = box.getSize(new Vector3()), centre = box.getCenter(new Vector3());
  const fill = new Mesh(new PlaneGeometry(size.y * 1.1, size.z * 1.1).rotateY(Math.PI / 2).rotateX(Math.PI / 2).translate(0, centre.y, centre.z), new MeshBasicMaterial({
    color: colour, side: DoubleSide, stencilWrite: true, stencilRef: 0, stencilFunc: NotEqualStencilFunc,
    stencilFail: ReplaceStencilOp, stencilZFail: ReplaceStencilOp, stencilZPass: ReplaceStencilOp,
  }));
  fill.renderOrder = order + 1e-3;
  fill.onAfterRender = (renderer) => renderer.clearStencil();
  return [fill, count(BackSide, IncrementWrapStencilOp), count(FrontSide, DecrementWrapStencilOp)];
}
