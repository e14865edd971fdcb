// Spanish words of the drawing, and of what can be done on it.

export const drawing = {
  drawing: "Dibujo de la vasija y su molde: a la izquierda alzado, a la derecha sección",
  axisUnit: "mm en el molde",
  drawingHint: "Arrastre un nodo, o selecciónelo y pulse − o + en la barra de abajo, o use las teclas de flecha: 0,1 mm, con Mayús 1 mm, con Alt 0,01 mm. Intro vuelve suave una esquina y al revés, Insertar añade un nodo, Suprimir lo quita. Más y menos amplían y reducen, 0 muestra todo.",
  nodeLabel: (i: number | string, n: number, r: string, z: string, kind: string) =>
    `Nodo ${i} de ${n}, radio ${r}, altura ${z}, ${kind}`,
  node: (i: number | string) => `Nodo ${i}`,
  noNode: "Seleccione un nodo en el dibujo o en la tabla para moverlo.",
  corner: "esquina", smooth: "suave", nodeTurn: (i: number | string, corner: boolean) => (corner ? `Nodo ${i}: esquina, hacerlo suave` : `Nodo ${i}: suave, hacerlo esquina`),
  nodeRadius: (i: number | string) => `Nodo ${i}, Radio, mm`, nodeHeight: (i: number | string) => `Nodo ${i}, Altura, mm`,
  addAfter: "Añadir detrás", remove: "Quitar", addAfterNode: (i: number | string) => `Añadir tras ${i}`, removeNode: (i: number | string) => `Quitar ${i}`,
  nudgeIn: "1 mm hacia dentro", nudgeOut: "1 mm hacia fuera", nudgeDown: "1 mm más abajo", nudgeUp: "1 mm más arriba",
  moved: (i: number | string) => `nodo ${i} movido`, added: (i: number | string) => `nodo añadido tras ${i}`,
  removed: (i: number | string) => `nodo ${i} quitado`, turned: (i: number | string) => `nodo ${i}, esquina o suave`,
  thickest: (d: string) => `Pared más gruesa: ${d}, donde la arcilla cuaja al final.`, thickestPlace: "pared más gruesa",
  elevation: "alzado", section: "sección", trimLine: "línea de corte",
  seam: (z: string) => `costura ${z}`,
  catchMark: (d: string) => `engancha ${d}`, trapMark: (d: string) => `trampa ${d}`,

  // the editor
  zoom: "Ampliación", zoomIn: "Acercar", zoomOut: "Alejar", zoomWhole: "Todo",
  panLeft: "Mostrar lo de la izquierda", panRight: "Mostrar lo de la derecha", panUp: "Mostrar lo de arriba", panDown: "Mostrar lo de abajo",
  firstNode: "Seleccionar el nodo 1", nodeBefore: "Nodo anterior", nodeAfter: "Nodo siguiente",
  toward: (k: number | string) => `al nodo ${k}`, straight: "recto", upright: "vertical", level: "horizontal", snap: "Ajustar",
  straightened: (i: number | string, k: number | string) => `tramo del nodo ${i} al ${k} enderezado`,
  linedUp: (i: number | string, k: number | string, how: "upright" | "level") => `nodo ${i} puesto ${how === "upright" ? "en vertical" : "a nivel"} con el nodo ${k}`,
  behind: "Imagen detrás del perfil", behindShow: "Mostrar la imagen", behindHow: "Intensidad",
};
